using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.AccessLog;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;
using Microsoft.Extensions.DependencyInjection;
using Slice = HairClinic.Web.Features.MyHair.WhoSawMine;

namespace HairClinic.Web.Tests.Features.MyHair.WhoSawMine;

public sealed class WhoSawMineTests(PgServer server)
{
    private readonly OwnScene _own = new();
    private Person _stylist = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_client_reads_who_looked_where_they_work_and_when_newest_first()
    {
        await using var clinic = await OpenClinicAsync();
        await NoteAsync(clinic, clinic.Acting(_stylist, _own.Salon), AccessAction.OpenedHealth, _own.Client);
        await NoteAsync(clinic, _own.Acting(clinic), AccessAction.OpenedPhotos, _own.Client);

        var screen = (await OpenAsync(clinic))!;

        var (mine, theirs) = (screen.Rows[0], screen.Rows[1]);
        Assert.Equal((AccessActorKind.Client, AccessAction.OpenedPhotos, null), (mine.Who, mine.Action, mine.Name));
        Assert.Equal(
            (AccessAction.OpenedHealth, "Tam Rowe", "Stylist", TestClinic.UsualNow),
            (theirs.Action, theirs.Name, theirs.Role, theirs.At)
        );
        Assert.Equal(["Elm Row"], theirs.Salons);
    }

    [Fact]
    public async Task What_concerns_others_or_nobody_is_not_among_it()
    {
        await using var clinic = await OpenClinicAsync();
        await NoteAsync(clinic, clinic.Acting(_stylist, _own.Salon), AccessAction.OpenedHealth, _own.Other);
        await NoteAsync(clinic, clinic.Acting(_stylist, _own.Salon), AccessAction.ExportedPractice, null);

        Assert.Empty((await OpenAsync(clinic))!.Rows);
    }

    [Fact]
    public async Task What_was_seen_of_a_record_folded_into_theirs_is_theirs_to_know()
    {
        Client folded = null!;
        await using var clinic = await OpenClinicAsync(scene => folded = scene.AddClient("C-9", "Ada Fenwick", _own.Salon));
        await NoteAsync(clinic, clinic.Acting(_stylist, _own.Salon), AccessAction.OpenedHealth, folded);
        await clinic.LayAsync(scene => scene.Db.Clients.Single(c => c.Id == folded.Id).MergeInto(_own.Client));

        Assert.Single((await OpenAsync(clinic))!.Rows);
    }

    [Fact]
    public async Task A_long_list_goes_on_where_the_last_page_ended()
    {
        await using var clinic = await OpenClinicAsync();
        for (var i = 0; i < Slice.Page + 2; i++)
            await NoteAsync(clinic, clinic.Acting(_stylist, _own.Salon), AccessAction.OpenedHealth, _own.Client);

        var first = (await OpenAsync(clinic))!;

        Assert.Equal(Slice.Page, first.Rows.Count);
        Assert.Equal(2, (await OpenAsync(clinic, first.NextBefore))!.Rows.Count);
    }

    private Task<TestClinic> OpenClinicAsync(Action<HairClinic.Web.Demo.Scenes.Scene>? more = null) =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                _own.Lay(scene);
                _stylist = scene.Hire("Tam Rowe", StaffRole.Stylist, _own.Salon);
                more?.Invoke(scene);
            }
        );

    private Task<Slice.Screen?> OpenAsync(TestClinic clinic, long? before = null) =>
        clinic.UseAsync<Slice, Slice.Screen?>(_own.Acting(clinic), s => s.OpenAsync(before, Cancel));

    private static Task<bool> NoteAsync(TestClinic clinic, Actor actor, AccessAction deed, Client? client) =>
        clinic.AsAsync(
            actor,
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                await services.GetRequiredService<AccessLogStore>().NoteAsync(db, deed, client?.Id, cancellation: Cancel);
                return true;
            }
        );
}
