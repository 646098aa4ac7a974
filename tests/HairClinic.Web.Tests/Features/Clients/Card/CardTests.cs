using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
using NodaTime;
using Slice = HairClinic.Web.Features.Clients.Card;

namespace HairClinic.Web.Tests.Features.Clients.Card;

public sealed class CardTests(PgServer server)
{
    private readonly ClientScene _given = new();
    private Client _client = null!;
    private HairSystem _unit = null!;
    private Bond _bond = null!;

    [Fact]
    public async Task The_card_shows_what_is_on_the_head_when_it_is_due_and_why()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(_ => (_client, _unit, _bond) = _given.Wearing("C-1", "Ada Fenwick", 10))
        );

        var screen = (await OpenAsync(clinic, _client.Id)).Screen!;

        Assert.Equal((BondState.Held, _bond.DueOn), (screen.Worn!.State, screen.Worn.Bond.DueOn));
        Assert.Equal(_bond.DueReasons, screen.Worn.Bond.DueReasons);
        Assert.Equal(_unit.Serial, Assert.Single(screen.Line.Lanes).Serial);
        Assert.Equal(("Adhesive A", "A-101", 3), screen.Recipe!.Lines.Select(l => (l.Product, l.Lot, l.Coats)).Single());
    }

    [Fact]
    public async Task A_fresh_bond_cures_by_the_clock_only_when_its_moment_is_known()
    {
        var at = TestClinic.UsualNow - Duration.FromHours(3);
        Client old = null!;
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                (_client, _unit, _bond) = g.Wearing("C-1", "Ada Fenwick", 0, at);
                (old, _, _) = g.Wearing("C-2", "Bo Larch", 0);
            })
        );

        var known = (await OpenAsync(clinic, _client.Id)).Screen!.Worn!;
        var unknown = (await OpenAsync(clinic, old.Id)).Screen!.Worn!;

        Assert.Equal((BondState.Curing, at + Duration.FromHours(24)), (known.State, known.CureEndsAt));
        Assert.Equal((BondState.Held, null), (unknown.State, unknown.CureEndsAt));
    }

    [Fact]
    public async Task A_lift_outranks_an_overdue_window()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                (_client, _unit, _bond) = g.Wearing("C-1", "Ada Fenwick", 60);
                _bond.ReportLift(new Lift(g.Today, g.Today.PlusDays(-1), LiftZone.Front, SpotFixed: false));
            })
        );

        Assert.Equal(BondState.Lifted, (await OpenAsync(clinic, _client.Id)).Screen!.Worn!.State);
    }

    [Fact]
    public async Task The_next_visit_is_the_soonest_still_ahead_and_the_wash_falls_into_the_rhythm()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                (_client, _unit, _bond) = g.Wearing("C-1", "Ada Fenwick", 10);
                _client.SetPreferences(WeekdaySet.None, washEveryDays: 14);
                foreach (var days in new[] { 9, 2, 16 })
                    g.Scene.Book(
                        _client,
                        g.Scene.ServiceWithPurpose(ServicePurpose.WashAndStyle),
                        g.Chair,
                        g.Stylist,
                        g.Scene.Now + Duration.FromDays(days)
                    );
            })
        );

        var screen = (await OpenAsync(clinic, _client.Id)).Screen!;

        Assert.Equal(_given.Today.PlusDays(2), screen.NextVisit!.Day);
        Assert.Equal(
            new WashVisitDay(_bond.AppliedOn.PlusDays(14) is var on && on.DayOfWeek == IsoDayOfWeek.Sunday ? on.PlusDays(-1) : on, false),
            screen.Wash
        );
    }

    [Fact]
    public async Task Opening_takes_twenty_one_round_trips_however_much_there_is()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                (_client, _unit, _bond) = g.Wearing("C-1", "Ada Fenwick", 10);
                for (var i = 0; i < 5; i++)
                    g.Scene.AddUnit(_client, g.Lace, g.Today.PlusDays(-i));
            })
        );

        await OpenAsync(clinic, _client.Id);

        // Ten of them for how long the units will last and when the next is ordered.
        Assert.Equal(21, clinic.Commands.All.Count);
    }

    [Fact]
    public async Task A_client_of_another_salon_is_not_found_until_they_come_to_mine()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g => _client = g.Scene.AddClient("C-9", "Cy Moss", g.There))
        );
        Assert.Equal(new Slice.Opened(null, null), await OpenAsync(clinic, _client.Id));

        await clinic.LayAsync(scene =>
        {
            var visit = new Visit(
                Guid.CreateVersion7(),
                _client.Id,
                _given.Here.Id,
                _given.Scene.ServiceWithPurpose(ServicePurpose.Consultation).Id
            );
            visit.PutAt(
                [(HairClinic.Domain.Chairs.SegmentKind.HandsOn, 60)],
                scene.Now,
                _given.Chair.Id,
                _given.Stylist.Id,
                _given.Here,
                [Guid.CreateVersion7()]
            );
            scene.Db.Visits.Add(visit);
        });

        Assert.NotNull((await OpenAsync(clinic, _client.Id)).Screen);
    }

    [Fact]
    public async Task A_client_of_another_practice_is_not_found()
    {
        await using var theirs = await TestClinic.OpenAsync(
            server,
            _given.Laying(g => _client = g.Scene.AddClient("C-9", "Cy Moss", g.Here))
        );
        var ourGiven = new ClientScene();
        await using var ours = await TestClinic.OpenAsync(server, ourGiven.Laying());

        var opened = await ours.UseAsync<Slice, Slice.Opened>(
            ours.Acting(ourGiven.Desk, ourGiven.Here),
            slice => slice.OpenAsync(_client.Id, TestContext.Current.CancellationToken)
        );

        Assert.Equal(new Slice.Opened(null, null), opened);
    }

    private Task<Slice.Opened> OpenAsync(TestClinic clinic, Guid id) =>
        clinic.UseAsync<Slice, Slice.Opened>(
            clinic.Acting(_given.Desk, _given.Here),
            slice => slice.OpenAsync(id, TestContext.Current.CancellationToken)
        );
}
