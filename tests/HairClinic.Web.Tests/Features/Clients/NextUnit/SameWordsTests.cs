using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Replacement;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Wear;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Features.Clients;
using HairClinic.Web.Fence;
using HairClinic.Web.Language;
using HairClinic.Web.Learning;
using HairClinic.Web.Tests.Ui;
using HairClinic.Web.Ui.Wear;
using NodaTime;
using AheadSlice = HairClinic.Web.Features.Outlook.Ahead;
using CardSlice = HairClinic.Web.Features.Clients.Card;
using DueSlice = HairClinic.Web.Features.Wear.Due;
using OwnUnits = HairClinic.Web.Features.MyHair.MyUnits;
using Slice = HairClinic.Web.Features.Clients.NextUnit;

namespace HairClinic.Web.Tests.Features.Clients.NextUnit;

/// <summary>What is said of one client's next unit is the same wherever it is said: lists, card, their own page.</summary>
public sealed class SameWordsTests(PgServer server) : UiTestContext
{
    private static readonly LocalDate Today = new(2027, 2, 3);
    private readonly List<Client> _clients = [];
    private Person _owner = null!;
    private Salon _salon = null!;
    private UnitKind _kind = null!;
    private Product _adhesive = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_lists_and_the_next_unit_say_the_same_of_each_client()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            foreach (var age in new[] { 2, 8, 40, 150, 230 })
                Wear(scene, age);
            OnOrder(scene, Wear(scene, 170), on: Today.PlusDays(-70), promised: Today.PlusDays(-14));
        });
        await RecalculateAsync(clinic);

        var ahead = await clinic.UseAsync<AheadSlice, AheadSlice.Screen>(Owner(clinic), s => s.OpenAsync(Cancel));
        var due = await clinic.UseAsync<DueSlice, DueSlice.Screen>(
            Owner(clinic),
            s => s.OpenAsync(new(Web.Features.Wear.DuePart.AtRisk, AllSalons: true, After: null), Cancel)
        );

        var rows = ahead.GapRisks.AtRisk.Concat(ahead.GapRisks.Soon).ToList();
        Assert.True(
            rows.Select(r => r.ReorderAdviceOn(Today, ahead.GapRisks.Accepted).Verdict).Distinct().Count() >= 3,
            "Late orders, late clients and orders that are near."
        );
        foreach (var row in rows)
        {
            var here = (await ScreenAsync(clinic, row.ClientId)).Plan!.Outlook.Standing;
            Assert.Equal(Words(here), Words(row.ReorderAdviceOn(Today, ahead.GapRisks.Accepted)));
            if (due.Risks.SingleOrDefault(r => r.ClientId == row.ClientId) is { } risk)
                Assert.Equal(Words(here), Words(risk.ReorderAdviceOn(Today, due.GapAccepted)));
        }
        Assert.Equal(ahead.GapRisks.AllAtRisk, due.Risks.Count);
    }

    [Fact]
    public async Task An_order_to_be_placed_soon_is_something_to_do_and_one_far_off_is_not()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            for (var age = 1; age < 40; age += 4)
                Wear(scene, age);
            // A spare in house: there is time.
            var spared = Wear(scene, 10);
            scene.AddUnit(spared, _kind, Today.PlusDays(-5));
        });

        var seen = new HashSet<ReorderVerdict>();
        foreach (var client in _clients)
        {
            var screen = await ScreenAsync(clinic, client.Id);
            var (standing, last) = (screen.Plan!.Outlook.Standing, NextUnitSentences.All(screen, Localizer)[^1]);
            seen.Add(standing.Verdict);
            Assert.Equal(standing.Verdict == ReorderVerdict.Wait, last == "There is nothing to do today.");
            if (standing.Verdict == ReorderVerdict.OrderSoon)
                Assert.StartsWith("First: order the next unit", last, StringComparison.Ordinal);
        }
        Assert.Superset(new HashSet<ReorderVerdict> { ReorderVerdict.OrderSoon, ReorderVerdict.Wait }, seen);
    }

    [Fact]
    public async Task Who_wears_a_worn_out_unit_is_not_said_to_be_without_hair_and_who_has_none_is()
    {
        Client bare = null!;
        await using var clinic = await OpenAsync(scene =>
        {
            Wear(scene, 400);
            bare = Wear(scene, 200, takenOff: 20);
        });

        var worn = await AllWordsAsync(clinic, _clients[0].Id);
        var none = await AllWordsAsync(clinic, bare.Id);

        Assert.DoesNotContain("without hair", worn, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("still wears well", worn, StringComparison.Ordinal);
        Assert.Contains("without hair", none, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_late_order_has_one_likely_day_on_the_card_and_on_their_own_page_and_it_is_to_come()
    {
        Client first = null!;
        await using var clinic = await OpenAsync(scene =>
        {
            OnOrder(scene, Wear(scene, 100), on: Today.PlusDays(-90), promised: Today.PlusDays(-12));
            // Has never worn a unit, and their first is late.
            first = scene.AddClient("first", "Una First", _salon, email: "first@example.test");
            OnOrder(scene, first, on: Today.PlusDays(-90), promised: Today.PlusDays(-12));
        });
        await clinic.ReadAsync(db => Web.Tests.Features.MyHair.KeyScene.ConfirmAsync(db));

        foreach (var client in new[] { _clients[0], first })
        {
            var card = (await clinic.UseAsync<CardSlice, CardSlice.Opened>(Owner(clinic), s => s.OpenAsync(client.Id, Cancel))).Screen!;
            var own = await clinic.UseAsync<OwnUnits, WearLineData?>(await clinic.SignInAsync(client.Id), s => s.OpenAsync(Cancel));

            var (here, there) = (card.Line.Lanes.Single(l => l.PromisedTo is not null), own!.Lanes.Single(l => l.PromisedTo is not null));
            Assert.Equal((here.PromisedFrom, here.PromisedTo), (there.PromisedFrom, there.PromisedTo));
            Assert.True(here.PromisedFrom >= Today);
        }
    }

    private (string, string) Words(ReorderAdvice standing) =>
        (NextUnitText.Advice(standing, Localizer), NextUnitText.Why(standing, Localizer));

    private async Task<string> AllWordsAsync(TestClinic clinic, Guid client)
    {
        var screen = await ScreenAsync(clinic, client);
        var standing = screen.Plan!.Outlook.Standing;
        return string.Join(
            '\n',
            [
                .. NextUnitSentences.All(screen, Localizer),
                WearLineSentence.Describe(screen.Line!, Localizer, forClient: false),
                NextUnitText.Advice(standing, Localizer),
                NextUnitText.Why(standing, Localizer),
            ]
        );
    }

    private async Task<Slice.Screen> ScreenAsync(TestClinic clinic, Guid client) =>
        (await clinic.UseAsync<Slice, Slice.Screen?>(Owner(clinic), s => s.OpenAsync(client, Cancel)))!;

    private PersonActor Owner(TestClinic clinic) => clinic.Acting(_owner, _salon);

    private async Task RecalculateAsync(TestClinic clinic) =>
        await clinic.ReadAsync(async db =>
        {
            var book = await ReorderFacts.LoadAsync(db, Cancel);
            return await ReorderPlanStore.RecalculateAsync(
                db,
                book,
                [.. _clients.Select(c => c.Id)],
                clinic.Clock.GetCurrentInstant(),
                Cancel
            );
        });

    private Task<TestClinic> OpenAsync(Action<Scene> lay) =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("North");
                _salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 1);
                _owner = scene.Hire("Ola Test", StaffRole.Owner, _salon);
                _adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "acrylic", "A1");
                _kind = scene.AddUnitKind("Everyday", "Silk top", "Workshop North");
                lay(scene);
            }
        );

    private Client Wear(Scene scene, int daysAgo, int? takenOff = null)
    {
        var code = $"w-{_clients.Count}";
        var client = scene.AddClient(code, $"Una Test {_clients.Count}", _salon, email: $"{code}@example.test");
        _clients.Add(client);
        var unit = scene.AddUnit(client, _kind, Today.PlusDays(-daysAgo - 1));
        var bond = scene.AddBond(client, unit, Today.PlusDays(-daysAgo), _adhesive);
        if (takenOff is { } days)
        {
            bond.Remove(Today.PlusDays(-days), Domain.Bonding.RemovalReason.Scheduled);
            unit.TakeOff();
            unit.LeaveService(UnitState.Retired, Today.PlusDays(-days), "worn out");
        }
        return client;
    }

    private void OnOrder(Scene scene, Client client, LocalDate on, LocalDate promised)
    {
        var unit = new HairSystem(Guid.CreateVersion7(), $"{client.Code}-next", client.Id, _kind.Id, on);
        unit.Order(on);
        unit.AddDeliveryPromise(Guid.CreateVersion7(), promised, on);
        scene.Db.HairSystems.Add(unit);
    }
}
