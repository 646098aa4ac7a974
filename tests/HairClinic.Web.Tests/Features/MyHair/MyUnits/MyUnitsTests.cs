using HairClinic.Domain.Clients;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Wear;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Fence;
using NodaTime;
using Slice = HairClinic.Web.Features.MyHair.MyUnits;

namespace HairClinic.Web.Tests.Features.MyHair.MyUnits;

public sealed class MyUnitsTests(PgServer server)
{
    private Client _client = null!;
    private Client _duplicate = null!;
    private ClientSignIn _signIn = null!;

    [Fact]
    public async Task A_client_sees_their_own_units_and_nobody_elses()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        var line = await OpenAsync(clinic, _client.Id);

        Assert.Equal(new LocalDate(2027, 1, 20), Assert.Single(Assert.Single(line!.Lanes).Bonds).AppliedOn);
    }

    [Fact]
    public async Task A_record_merged_into_another_leads_to_the_one_kept()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        var line = await OpenAsync(clinic, _duplicate.Id);

        Assert.Single(line!.Lanes);
    }

    private void Lay(Scene scene)
    {
        scene.AddPractice("Practice under test");
        var salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
        var adhesive = scene.AddProduct("Adhesive under test", ProductKind.Adhesive, "water-based acrylic", "L1");
        var kind = scene.AddUnitKind("Lace under test", "French lace", "Workshop under test");
        _client = scene.AddClient("C-1", "Ada Fenwick", salon, email: "ada@example.test");
        scene.Db.ClientSignIns.Add(_signIn = new ClientSignIn(Guid.NewGuid(), _client.Id, "ada@example.test", scene.Now));
        scene.AddBond(_client, scene.AddUnit(_client, kind, new LocalDate(2027, 1, 5)), new LocalDate(2027, 1, 20), adhesive);
        var other = scene.AddClient("C-2", "Bo Larch", salon);
        scene.AddBond(other, scene.AddUnit(other, kind, new LocalDate(2027, 1, 5)), new LocalDate(2027, 1, 22), adhesive);
        _duplicate = scene.AddClient("C-3", "Ada Fenwick", salon);
        _duplicate.MergeInto(_client);
    }

    private Task<WearLineData?> OpenAsync(TestClinic clinic, Guid clientId) =>
        clinic.UseAsync<Slice, WearLineData?>(
            new ClientActor(clinic.PracticeId, clientId, _signIn.Id),
            slice => slice.OpenAsync(TestContext.Current.CancellationToken)
        );
}
