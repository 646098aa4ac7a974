using System.Text;
using HairClinic.Domain.Practices;
using HairClinic.Web.AccessLog;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Tests.Features.Clients;
using Microsoft.Extensions.DependencyInjection;
using Slice = HairClinic.Web.Features.Settings.AccessLog;

namespace HairClinic.Web.Tests.Features.Settings.AccessLog;

public sealed class AccessLogPageTests(PgServer server)
{
    private readonly ClientScene _given = new();
    private Guid _ada;
    private Person _owner = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Lines_come_newest_first_with_names_and_are_found_by_client_person_and_deed()
    {
        await using var clinic = await OpenClinicAsync();
        await NoteAsync(clinic, _given.Stylist, AccessAction.OpenedHealth, _ada);
        await NoteAsync(clinic, _owner, AccessAction.ExportedPractice, null);

        var all = (await OpenAsync(clinic, new(null, null, null, null))).Rows;

        Assert.Equal([2L, 1L], all.Select(r => r.Number));
        Assert.Equal(("Tam Rowe", "Stylist", "C-1", "Ada Fenwick"), (all[1].Person, all[1].Role, all[1].ClientCode, all[1].ClientName));
        Assert.Equal(1, Assert.Single((await OpenAsync(clinic, new(" C-1 ", null, null, null))).Rows).Number);
        Assert.Equal(2, Assert.Single((await OpenAsync(clinic, new(null, _owner.Id, null, null))).Rows).Number);
        Assert.Equal(1, Assert.Single((await OpenAsync(clinic, new(null, null, AccessAction.OpenedHealth, null))).Rows).Number);
        Assert.Empty((await OpenAsync(clinic, new("C-2", null, null, null))).Rows);
    }

    [Fact]
    public async Task A_long_log_goes_on_on_the_next_page()
    {
        await using var clinic = await OpenClinicAsync();
        for (var i = 0; i < Slice.Page + 2; i++)
            await NoteAsync(clinic, _given.Stylist, AccessAction.OpenedHealth, _ada);

        var first = await OpenAsync(clinic, new(null, null, null, null));
        var second = await OpenAsync(clinic, new(null, null, null, first.NextBefore));

        Assert.Equal([2L, 1L], second.Rows.Select(r => r.Number));
        Assert.Null(second.NextBefore);
    }

    [Fact]
    public async Task Taking_the_log_out_is_its_newest_line()
    {
        await using var clinic = await OpenClinicAsync();
        await NoteAsync(clinic, _given.Stylist, AccessAction.OpenedHealth, _ada);

        var file = await clinic.UseAsync<Slice, byte[]>(
            clinic.Acting(_owner, _given.Here),
            s => s.ExportCsvAsync(new(null, null, null, null), Cancel)
        );

        var lines = Encoding.UTF8.GetString(file).TrimStart('\uFEFF').Split("\r\n");
        Assert.Equal("number,at,who,person,role,deed,client,reason", lines[0]);
        Assert.Equal("2,2027-02-03T10:00:00Z,Person,'=Owner,Owner,ExportedAccessLog,,", lines[1]);
        Assert.Equal("1,2027-02-03T10:00:00Z,Person,Tam Rowe,Stylist,OpenedHealth,C-1,", lines[2]);
    }

    private Task<TestClinic> OpenClinicAsync() =>
        TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                _ada = g.Scene.AddClient("C-1", "Ada Fenwick", g.Here).Id;
                _owner = g.Scene.Hire("=Owner", StaffRole.Owner, g.Here, g.There);
            })
        );

    private Task<Slice.Screen> OpenAsync(TestClinic clinic, Slice.Filter filter) =>
        clinic.UseAsync<Slice, Slice.Screen>(clinic.Acting(_owner, _given.Here), s => s.OpenAsync(filter, Cancel));

    private static Task<bool> NoteAsync(TestClinic clinic, Person person, AccessAction deed, Guid? client) =>
        clinic.AsAsync(
            clinic.Acting(person),
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                await services.GetRequiredService<AccessLogStore>().NoteAsync(db, deed, client, cancellation: Cancel);
                return true;
            }
        );
}
