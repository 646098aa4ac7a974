using HairClinic.Domain.Checks;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
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
    private static readonly LocalDate Ordered = new(2026, 1, 8);

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

    /// <summary>Staff are asked about it; what they were asked is not a client's to read, what follows from it is.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task An_order_that_may_be_forgotten_is_expected_on_no_day(bool mayBeForgotten)
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                Lay(scene);
                var kind = scene.AddUnitKind("Mono under test", "French lace", "Workshop under test");
                var unit = new HairSystem(Guid.NewGuid(), "U-old", _client.Id, kind.Id, Ordered);
                unit.ImportState(UnitState.Ordered, new UnitDates { SpecifiedOn = Ordered, OrderedOn = Ordered }, retiredBecause: null);
                scene.Db.HairSystems.Add(unit);
                if (mayBeForgotten)
                    scene.Db.DateChecks.Add(
                        DateCheck.OfUnit(
                            Guid.NewGuid(),
                            DateCheckKind.OrderWaiting,
                            unit.Id,
                            new(Ordered, null, 280, 40, 70),
                            Ordered.PlusDays(390)
                        )
                    );
            }
        );

        var line = await OpenAsync(clinic, _client.Id);

        var awaited = Assert.Single(line!.Lanes, lane => lane.Kind == "Mono under test");
        Assert.Equal(Ordered, awaited.Ordered);
        Assert.Equal(mayBeForgotten, awaited.PromisedFrom is null);
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
