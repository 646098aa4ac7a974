using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Web.Learning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Tests.Learning;

/// <summary>Whose next order is planned, and what of their units counts as hair.</summary>
public sealed class ReorderFactsTests(PgServer server)
{
    private static readonly LocalDate Today = new(2027, 2, 3);
    private Salon _salon = null!;
    private Client _client = null!;
    private HairSystem _worn = null!;
    private HairSystem _arrived = null!;
    private HairSystem _spare = null!;
    private Bond _bond = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_is_on_the_head_and_what_has_just_arrived_is_hair_and_an_emergency_spare_is_none()
    {
        await using var clinic = await OpenAsync();

        var plan = (await CaseAsync(clinic))!;

        Assert.Equal(new[] { _worn.Id, _arrived.Id }.Order(), plan.InHand.Order());
        Assert.Equal([_spare.Id], plan.Emergency);
    }

    [Theory]
    [InlineData(60, true)]
    [InlineData(61, false)]
    public async Task Whoever_has_worn_nothing_for_more_than_sixty_days_is_planned_for_no_more(int days, bool planned)
    {
        await using var clinic = await OpenAsync(offOn: Today.PlusDays(-days));

        Assert.Equal(planned, await CaseAsync(clinic) is not null);
    }

    private Task<TestClinic> OpenAsync(LocalDate? offOn = null) =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("North");
                _salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 1);
                var adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "acrylic", "A1");
                var kind = scene.AddUnitKind("Everyday", "Silk top", "Workshop North");
                _client = scene.AddClient("c-1", "Una Test", _salon);
                _worn = scene.AddUnit(_client, kind, Today.PlusDays(-200));
                _arrived = scene.AddUnit(_client, kind, Today);
                _arrived.ImportState(UnitState.Arrived, new UnitDates { OrderedOn = Today.PlusDays(-70), ArrivedOn = Today }, null, 0);
                _spare = scene.AddUnit(_client, kind, Today.PlusDays(-400));
                _spare.LeaveService(UnitState.EmergencySpare, Today.PlusDays(-100), "Worn");
                _bond = scene.AddBond(_client, _worn, Today.PlusDays(-90), adhesive);
                if (offOn is { } day)
                {
                    _bond.Remove(day, RemovalReason.Scheduled);
                    _worn.TakeOff();
                }
            }
        );

    private Task<ClientReorderInput?> CaseAsync(TestClinic clinic) =>
        clinic.ReadAsync(async db =>
        {
            var book = await ReorderFacts.LoadAsync(db, Cancel);
            var units = await ClientUnits.LoadAsync(db, book.Kinds, [(_client.Id, _salon.Id, Today)], Cancel);
            return book.PrepareReorder(Assert.Single(units));
        });
}
