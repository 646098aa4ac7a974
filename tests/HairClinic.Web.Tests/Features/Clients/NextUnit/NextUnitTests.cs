using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Replacement;
using HairClinic.Domain.Shelf;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Features.Clients;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;
using HairClinic.Web.Tests.Ui;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Clients.NextUnit;

namespace HairClinic.Web.Tests.Features.Clients.NextUnit;

/// <summary>Silk tops last 120 to 240 worn days here; half of the orders take 56 days, and 14 more until they are ready.</summary>
public sealed class NextUnitTests(PgServer server) : UiTestContext
{
    private static readonly LocalDate Today = new(2027, 2, 3);
    private Client _client = null!;
    private Person _desk = null!;
    private Salon _salon = null!;
    private UnitKind _kind = null!;
    private Product _adhesive = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_fresh_unit_leaves_time_and_the_story_names_the_last_day_to_order()
    {
        await using var clinic = await OpenAsync(scene => Worn(scene, 10));

        var screen = await ScreenAsync(clinic);

        var plan = screen.Plan!;
        Assert.False(plan.Outlook.AtRisk);
        Assert.True(plan.Outlook.OrderBy > Today);
        Assert.Empty(plan.Remedies);
        Assert.True(plan.Curve.Zip(plan.Curve.Skip(1)).All(p => p.First <= p.Second + 1e-12));
        Assert.Contains("The last day to order is", Story(screen)[^2], StringComparison.Ordinal);
        Assert.Equal("First: order the next unit, by Thu 11 Feb at the latest.", Story(screen)[^1]);
    }

    [Fact]
    public async Task Where_a_spare_is_always_kept_it_is_ordered_first_though_the_chance_of_a_gap_leaves_time()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            _kind.KeepSpares(1);
            Worn(scene, 10);
        });

        var screen = await ScreenAsync(clinic);

        var plan = screen.Plan!;
        Assert.Equal(ReorderVerdict.SpareMissing, plan.Outlook.Standing.Verdict);
        Assert.Equal((1, 1), (plan.Outlook.SparesMissing, plan.Outlook.Quantity));
        Assert.Equal(
            "A spare is always to be ready, and one is missing: it is neither in house nor on order. By the chance of a gap alone there would be time until Thu 11 Feb.",
            Story(screen)[^2]
        );
        Assert.Equal("First: order a spare.", Story(screen)[^1]);
        var numbers = Render<NextUnitNumbers>(p => p.Add(n => n.Plan, plan)).Markup;
        Assert.Contains("now, for the spare; by the chance of a gap alone Thu 11 Feb", numbers, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_last_day_to_order_is_the_last_on_which_the_curve_stays_within_what_is_accepted()
    {
        await using var clinic = await OpenAsync(scene => Worn(scene, 10));

        var plan = (await ScreenAsync(clinic)).Plan!;

        var days = plan.Outlook.Answer.ReorderInDays!.Value;
        Assert.True(plan.Curve[days] <= 0.05);
        Assert.True(plan.Curve[days + 1] > 0.05);
    }

    /// <summary>The unlucky client: the spare lost, the workshop late, a lift last week.</summary>
    [Fact]
    public async Task The_story_of_an_unlucky_client_can_be_read_aloud()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            var worn = Worn(scene, 150);
            worn.Bond.ReportLift(new Lift(Today.PlusDays(-6), Today.PlusDays(-7), LiftZone.Front, SpotFixed: false));
            scene.AddUnit(_client, _kind, Today.PlusDays(-40)).LeaveService(UnitState.Lost, Today.PlusDays(-12), "left on a train");
            OnOrder(scene, Today.PlusDays(-70), promised: Today.PlusDays(-14));
        });

        var screen = await ScreenAsync(clinic);

        var story = Story(screen);
        Assert.StartsWith("Unit c-1-2 was lost on", story[0], StringComparison.Ordinal);
        Assert.Equal("Una’s bond lifted on Wed 27 Jan, and no visit is booked: book one first.", story[1]);
        Assert.StartsWith("Unit c-1-1 will most likely be worn out between", story[2], StringComparison.Ordinal);
        Assert.StartsWith(
            "Unit c-1-3 from Workshop North was promised for Wed 20 Jan and is 14 days late. It will most likely be here between",
            story[3],
            StringComparison.Ordinal
        );
        Assert.Contains("chance that no unit still wears well before the one on order is ready", story[4], StringComparison.Ordinal);
        Assert.Contains("a new order would not lower it", story[4], StringComparison.Ordinal);
        Assert.StartsWith("First: ", story[5], StringComparison.Ordinal);
        Assert.True(screen.Plan!.Outlook.AtRisk);
        Assert.Equal([RemedyKind.OffTheShelf, RemedyKind.Repair, RemedyKind.AskTheWorkshop], screen.Plan.Remedies.Select(r => r.Kind));
    }

    [Fact]
    public async Task A_spare_at_rest_is_the_first_remedy_and_a_worn_one_is_for_an_emergency()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            Worn(scene, 230);
            scene
                .AddUnit(_client, _kind, Today.PlusDays(-400))
                .LeaveService(UnitState.EmergencySpare, Today.PlusDays(-100), "thin at the front");
        });

        var plan = (await ScreenAsync(clinic)).Plan!;

        Assert.True(plan.Outlook.IsLate);
        Assert.Equal(RemedyKind.WornSpare, plan.Remedies[0].Kind);
        Assert.Equal(RemedyKind.Rush, plan.Remedies[^1].Kind);
    }

    [Fact]
    public async Task What_might_be_done_lowers_the_chance_and_nothing_is_saved()
    {
        await using var clinic = await OpenAsync(scene => Worn(scene, 160));
        var tried = (await clinic.UseAsync<Slice, Slice.Tried?>(Desk(clinic), s => s.LoadWhatIfBaselineAsync(_client.Id, Cancel)))!;
        var rule = new ReorderRule(LeadTimeForecasts.DaysInSight);
        double Gap(ReorderScenario what) => tried.OutlookWith(what, rule).GapIfOrderedToday;

        var usual = Gap(new ReorderScenario());

        Assert.Equal(tried.Outlook.GapIfOrderedToday, usual, 12);
        Assert.True(Gap(new ReorderScenario(RushHalfDays: 21)) < usual);
        Assert.True(Gap(new ReorderScenario(RepairDays: 60)) < usual);
        Assert.True(Gap(new ReorderScenario(ExtraUnits: 1)) < Gap(new ReorderScenario(RepairDays: 20)));
    }

    [Fact]
    public async Task A_repeat_order_is_drafted_once_for_a_double_tap_and_copies_the_last_unit()
    {
        await using var clinic = await OpenAsync(scene => Worn(scene, 160).Unit.SetPrice(65_000, "GBP"));
        var (key, input) = (Guid.CreateVersion7(), new Slice.Input { ClientId = _client.Id, Note = "denser at the crown" });

        await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => DraftAsync(clinic, key, input)));

        var draft = await clinic.ReadAsync(db => db.HairSystems.SingleAsync(u => u.State == UnitState.Specified, Cancel));
        Assert.Equal(("c-1-2", _kind.Id, "denser at the crown"), (draft.Serial, draft.UnitKindId, draft.OrderNote));
        Assert.Equal((65_000L, "GBP"), (draft.PriceMinor, draft.Currency));
        Assert.NotNull(draft.RepeatsId);
        var screen = await ScreenAsync(clinic);
        Assert.Equal(["c-1-2"], screen.Drafts.Select(d => d.Serial));
        Assert.Equal(0, screen.Plan!.Outlook.InFlight);
    }

    // Two people at two screens, neither of whom has seen the other's draft.
    [Fact]
    public async Task Drafted_twice_at_the_same_moment_there_is_one_draft()
    {
        await using var clinic = await OpenAsync(scene => Worn(scene, 160));
        var input = new Slice.Input { ClientId = _client.Id };

        var made = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => DraftAsync(clinic, Guid.CreateVersion7(), input)));

        var draft = await clinic.ReadAsync(db => db.HairSystems.SingleAsync(u => u.State == UnitState.Specified, Cancel));
        Assert.All(made, m => Assert.Equal((draft.Id, draft.Serial), (m.UnitId, m.Serial)));
        Assert.Equal(3, made.Count(m => m.Already));
    }

    [Fact]
    public async Task Whoever_has_seen_the_first_draft_may_make_a_second()
    {
        await using var clinic = await OpenAsync(scene => Worn(scene, 160));
        await DraftAsync(clinic, Guid.CreateVersion7(), new Slice.Input { ClientId = _client.Id });

        var second = await DraftAsync(clinic, Guid.CreateVersion7(), new Slice.Input { ClientId = _client.Id, Known = 1 });

        Assert.False(second.Already);
        Assert.Equal(2, await clinic.ReadAsync(db => db.HairSystems.CountAsync(u => u.State == UnitState.Specified, Cancel)));
    }

    [Fact]
    public async Task Whoever_never_wore_a_unit_has_nothing_to_calculate()
    {
        await using var clinic = await OpenAsync(_ => { });

        var screen = await ScreenAsync(clinic);

        Assert.Null(screen.Plan);
        Assert.Equal(["Una wears no unit of ours now, so there is nothing to work out."], Story(screen));
        await Refused.SayingAsync(
            "There is no unit yet that could be repeated.",
            () => DraftAsync(clinic, Guid.CreateVersion7(), new Slice.Input { ClientId = _client.Id })
        );
    }

    [Fact]
    public async Task Another_salons_client_is_not_shown()
    {
        Person elsewhere = null!;
        await using var clinic = await OpenAsync(scene =>
        {
            Worn(scene, 10);
            elsewhere = scene.Hire("Elsewhere", StaffRole.FrontDesk, scene.OpenSalon("Quayside", "Europe/London", "GBP", 1));
        });

        Assert.Null(await clinic.UseAsync<Slice, Slice.Screen?>(clinic.Acting(elsewhere), s => s.OpenAsync(_client.Id, Cancel)));
    }

    private PersonActor Desk(TestClinic clinic) => clinic.Acting(_desk, _salon);

    private async Task<Slice.Screen> ScreenAsync(TestClinic clinic) =>
        (await clinic.UseAsync<Slice, Slice.Screen?>(Desk(clinic), s => s.OpenAsync(_client.Id, Cancel)))!;

    private Task<Slice.Outcome> DraftAsync(TestClinic clinic, Guid key, Slice.Input input) =>
        clinic.UseAsync<Slice, Slice.Outcome>(Desk(clinic), s => s.DraftAsync(key, input, Cancel));

    private IReadOnlyList<string> Story(Slice.Screen screen) => NextUnitSentences.All(screen, Localizer);

    private Task<TestClinic> OpenAsync(Action<Scene> lay) =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("North");
                _salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 1);
                _desk = scene.Hire("Desk", StaffRole.FrontDesk, _salon);
                _adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "acrylic", "A1");
                _kind = scene.AddUnitKind("Everyday", "Silk top", "Workshop North");
                _client = scene.AddClient("c-1", "Una Test", _salon);
                _client.Rename("Una Test", "Una");
                lay(scene);
            }
        );

    private (HairSystem Unit, Bond Bond) Worn(Scene scene, int daysAgo)
    {
        var unit = scene.AddUnit(_client, _kind, Today.PlusDays(-daysAgo - 1));
        return (unit, scene.AddBond(_client, unit, Today.PlusDays(-daysAgo), _adhesive));
    }

    private void OnOrder(Scene scene, LocalDate on, LocalDate promised)
    {
        var unit = new HairSystem(Guid.CreateVersion7(), "c-1-3", _client.Id, _kind.Id, on);
        unit.Order(on);
        unit.AddDeliveryPromise(Guid.CreateVersion7(), promised, on);
        scene.Db.HairSystems.Add(unit);
    }
}
