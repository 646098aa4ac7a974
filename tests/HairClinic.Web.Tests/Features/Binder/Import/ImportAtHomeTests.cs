using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Features.Binder;
using HairClinic.Web.Features.Binder.Sheets;
using HairClinic.Web.Fence;
using HairClinic.Web.Tests.Features.Clients;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Binder.Import;

namespace HairClinic.Web.Tests.Features.Binder.Import;

/// <summary>A file moves nobody whom the person who brings it could not move by hand.</summary>
public sealed class ImportAtHomeTests(PgServer server)
{
    private readonly ClientScene _given = new();
    private Client _client = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_salon_that_was_let_in_takes_nobody_over()
    {
        await using var clinic = await OpenAsync();
        var there = clinic.Acting(await ManagerThereAsync(clinic), _given.There);

        Assert.Equal(
            ["2 home salon “Quay”: their home salon as it is: Elm Row; only people there move this client"],
            await ProblemsAsync(clinic, there, "C-1,Ada Fenwick,Quay")
        );
        await Refused.SayingAsync(
            "{0} rows cannot be brought. Nothing was written; look at the preview again.",
            () => BringAsync(clinic, there, "C-1,Ada Fenwick,Quay")
        );
        await BringAsync(clinic, there, "C-1,Ada Fenwicke,Elm Row");

        Assert.Equal(
            (_given.Here.Id, "Ada Fenwicke"),
            await clinic.ReadAsync(async db =>
            {
                var kept = await db.Clients.SingleAsync(c => c.Id == _client.Id, Cancel);
                return (kept.HomeSalonId, kept.Name);
            })
        );
    }

    [Fact]
    public async Task Nobody_is_sent_to_nor_made_a_client_of_a_salon_one_does_not_work_in()
    {
        await using var clinic = await OpenAsync();
        var here = clinic.Acting(_given.Of(StaffRole.Manager), _given.Here);
        const string problem = "home salon “Quay”: a salon you work in: Elm Row; to another one a client is transferred";

        Assert.Equal(["2 " + problem], await ProblemsAsync(clinic, here, "C-1,Ada Fenwick,Quay"));
        Assert.Equal(["2 " + problem], await ProblemsAsync(clinic, here, "N-1,Newt Asher,Quay"));
        Assert.Empty(
            await ProblemsAsync(clinic, clinic.Acting(_given.Of(StaffRole.Owner), _given.Here, _given.There), "C-1,Ada Fenwick,Quay")
        );
    }

    private Task<TestClinic> OpenAsync() =>
        TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                g.Scene.Hire("Manager there", StaffRole.Manager, g.There);
                g.LetIn(_client = g.Scene.AddClient("C-1", "Ada Fenwick", g.Here));
            })
        );

    private static Task<Person> ManagerThereAsync(TestClinic clinic) =>
        clinic.ReadAsync(db => db.People.SingleAsync(p => p.Name == "Manager there", Cancel));

    private static async Task<List<string>> ProblemsAsync(TestClinic clinic, PersonActor person, string line) =>
        [
            .. (await clinic.UseAsync<Slice, ImportReport>(person, s => s.PreviewAsync(Draft(line).Order!, Cancel))).Problems.Select(
                Binders.Told
            ),
        ];

    private static Task<Slice.Outcome> BringAsync(TestClinic clinic, PersonActor person, string line) =>
        clinic.UseAsync<Slice, Slice.Outcome>(person, s => s.SaveAsync(Guid.CreateVersion7(), Draft(line), createMissing: false, Cancel));

    private static Web.Features.Binder.SheetDraft Draft(string line) =>
        Binders.Draft(SheetKind.Clients, Binders.Csv("code,name,home salon", line));
}
