using HairClinic.Domain.Bonding;
using HairClinic.Domain.Chairs;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Demo.Scenes;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Details = HairClinic.Web.Features.Visits.VisitDetails;
using Rebond = HairClinic.Web.Features.Visits.LogRebond;
using Slice = HairClinic.Web.Features.Visits.LogTakeDown;

namespace HairClinic.Web.Tests.Features.Visits.LogTakeDown;

public sealed class LogTakeDownTests(PgServer server)
{
    private readonly ChairScene _scene = new();
    private Product _remover = null!;
    private ProductLot _expired = null!;

    [Fact]
    public async Task The_bond_ends_the_unit_rests_and_nothing_is_due()
    {
        await using var clinic = await OpenAsync();
        var input = await NormalAsync(clinic, RemovalReason.Skin);
        input.NoBondUntil = ChairScene.Today.PlusDays(14);

        var outcome = await SaveAsync(clinic, input);

        var bond = await BondAsync(clinic);
        Assert.Equal(
            (ChairScene.Today, RemovalReason.Skin, ChairScene.Today.PlusDays(14)),
            (bond.RemovedOn, bond.RemovedBecause, bond.NoBondUntil)
        );
        Assert.Equal((_scene.Worn.Serial, HoldCensoring.AtLeast, 29), (outcome.Serial, outcome.Hold, outcome.Lower));
        Assert.Equal(ChairScene.Today.PlusDays(14), outcome.NoBondUntil);
        Assert.Equal((UnitState.Resting, VisitState.Done), await StatesAsync(clinic));
        Assert.Equal(_scene.Worn.Id, await clinic.ReadAsync(db => db.VisitRecords.Select(r => r.RemovedUnitId).SingleAsync(Cancellation)));
    }

    [Fact]
    public async Task The_form_opens_with_what_is_learnt_from_left_open()
    {
        await using var clinic = await OpenAsync();

        var screen = await ScreenAsync(clinic);

        Assert.Equal(InspectionGrades.NotLookedAt, screen.Start.Grades());
        Assert.Equal(((bool?)null, (RemovalReason?)null), (screen.Start.FoundLifted, screen.Start.Because));
        Assert.Equal((_scene.Bond!.Id, ChairScene.Today), (screen.Start.WornBondId, screen.Day));
        // Adhesives are no choice here.
        Assert.Equal(["Remover R"], screen.Products.Select(p => p.Name));
    }

    [Fact]
    public async Task Opening_takes_five_round_trips_at_most_and_saving_six()
    {
        await using var clinic = await OpenAsync();
        await ScreenAsync(clinic);
        Assert.InRange(clinic.Commands.All.Count, 1, 5);
        var input = await NormalAsync(clinic, RemovalReason.Rest);
        clinic.Commands.Clear();

        await SaveAsync(clinic, input);

        Assert.InRange(clinic.Commands.All.Count, 1, 6);
    }

    [Fact]
    public async Task What_it_was_taken_down_with_is_found_by_its_lot_also_one_that_had_expired()
    {
        await using var clinic = await OpenAsync();
        var input = await NormalAsync(clinic, RemovalReason.Reaction);
        input.Products.Add(new Rebond.ProductLine { ProductId = _remover.Id, LotId = _expired.Id });

        await SaveAsync(clinic, input);

        var heads = await clinic.ReadAsync(db =>
            (
                from used in db.TakeDownProducts
                join record in db.VisitRecords on used.VisitRecordId equals record.Id
                join visit in db.Visits on record.VisitId equals visit.Id
                where used.LotId == _expired.Id
                select visit.ClientId
            ).ToListAsync(Cancellation)
        );
        Assert.Equal([_scene.Client.Id], heads);
        var details = await AsStylistAsync<Details, Details.Screen?>(clinic, s => s.OpenAsync(_scene.Visit.Id, Cancellation));
        Assert.Equal([new Details.UsedLine("Remover R", "R-0")], details!.TakenDownWith);
    }

    [Fact]
    public async Task A_unit_lost_at_home_leaves_service_in_the_same_save()
    {
        await using var clinic = await OpenAsync();
        var input = await NormalAsync(clinic, RemovalReason.LostAtHome);
        (input.FoundLifted, input.LiftedOn) = (null, ChairScene.Today.PlusDays(-2));

        var outcome = await SaveAsync(clinic, input);

        Assert.Equal((HoldCensoring.Exact, 27), (outcome.Hold, outcome.Lower));
        var unit = await clinic.ReadAsync(db => db.HairSystems.SingleAsync(u => u.Id == _scene.Worn.Id, Cancellation));
        Assert.Equal((UnitState.Lost, "lost at home"), (unit.State, unit.RetiredBecause));
        Assert.Equal(
            InspectionGrades.NotLookedAt,
            await clinic.ReadAsync(db => db.VisitRecords.Select(r => r.Grades).SingleAsync(Cancellation))
        );
    }

    [Fact]
    public async Task What_was_lost_about_a_week_ago_is_gone_since_the_day_by_which_it_was()
    {
        await using var clinic = await OpenAsync();
        var input = await NormalAsync(clinic, RemovalReason.LostAtHome);
        (input.FoundLifted, input.LiftedSince) = (null, SinceWhen.AboutAWeek);

        var outcome = await SaveAsync(clinic, input);

        Assert.Equal((HoldCensoring.Between, 20, 24), (outcome.Hold, outcome.Lower, outcome.Upper));
        var unit = await clinic.ReadAsync(db => db.HairSystems.SingleAsync(u => u.Id == _scene.Worn.Id, Cancellation));
        Assert.Equal(
            (ChairScene.Today.PlusDays(-5), ChairScene.Today.PlusDays(-5)),
            (unit.Dates.RetiredOn, (await BondAsync(clinic)).RemovedOn)
        );
    }

    [Fact]
    public async Task Where_nothing_is_bonded_nothing_comes_off()
    {
        var bare = new ChairScene { Bonded = false };
        await using var clinic = await TestClinic.OpenAsync(server, bare.Lay);
        var who = clinic.Acting(bare.Stylist, bare.Salon);

        Assert.Null((await clinic.UseAsync<Slice, Slice.Screen?>(who, s => s.OpenAsync(bare.Visit.Id, Cancellation)))!.Worn);
        await Refused.SayingAsync(
            "No bond is on this head, so none can come off.",
            () =>
                clinic.UseAsync<Slice, Slice.Outcome>(
                    clinic.Acting(bare.Stylist, bare.Salon),
                    s =>
                        s.SaveAsync(
                            Guid.CreateVersion7(),
                            new()
                            {
                                VisitId = bare.Visit.Id,
                                Because = RemovalReason.Rest,
                                FoundLifted = false,
                            },
                            Cancellation
                        )
                )
        );
    }

    [Fact]
    public async Task A_refused_form_changes_nothing()
    {
        await using var clinic = await OpenAsync();
        var input = await NormalAsync(clinic, RemovalReason.Skin);
        input.NoBondUntil = ChairScene.Today;
        input.Products.Add(new Rebond.ProductLine { ProductId = _remover.Id });

        await Refused.SayingAsync("Until when no bond is made lies after the day of the take-down, {0}.", () => SaveAsync(clinic, input));
        input.NoBondUntil = null;
        input.Products[0].LotId = _scene.Open.Id;
        await Refused.SayingAsync("That lot is not one of {0}.", () => SaveAsync(clinic, input));

        Assert.True((await BondAsync(clinic)).IsOpen);
        Assert.Equal((UnitState.Bonded, VisitState.Booked), await StatesAsync(clinic));
        Assert.Equal(0, await clinic.ReadAsync(db => db.VisitRecords.CountAsync(Cancellation)));
    }

    [Fact]
    public async Task The_same_tap_sent_four_times_at_once_logs_once()
    {
        await using var clinic = await OpenAsync();
        var (key, input) = (Guid.CreateVersion7(), await NormalAsync(clinic, RemovalReason.Rest));

        var answers = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => SaveAsync(clinic, input, key: key)));

        Assert.Single(answers.Distinct());
        Assert.Equal(1, await clinic.ReadAsync(db => db.VisitRecords.CountAsync(Cancellation)));
    }

    [Fact]
    public async Task Of_two_who_log_it_at_once_one_wins_and_the_other_is_told_who_did()
    {
        await using var clinic = await OpenAsync();
        var mine = await NormalAsync(clinic, RemovalReason.Rest);
        var theirs = mine with { Because = RemovalReason.Operation };

        var results = await Task.WhenAll(
            TryAsync(() => SaveAsync(clinic, mine)),
            TryAsync(() => SaveAsync(clinic, theirs, _scene.Colleague))
        );

        Assert.Single(results, r => r is null);
        Assert.Single(results, r => r is Refusal or OvertakenException);
        Assert.Contains((await ScreenAsync(clinic)).Logged!.By, new[] { _scene.Stylist.Name, _scene.Colleague.Name });
        Assert.Equal(1, await clinic.ReadAsync(db => db.VisitRecords.CountAsync(Cancellation)));
    }

    [Fact]
    public async Task Of_a_rebond_and_a_take_down_of_one_head_at_once_one_counts()
    {
        await using var clinic = await OpenAsync();
        await clinic.LayAsync(_scene.BookNext);
        var off = await NormalAsync(clinic, RemovalReason.Rest);
        var on = (await AsStylistAsync<Rebond, Rebond.Screen?>(clinic, s => s.OpenAsync(_scene.Next.Id, Cancellation)))!.Start;
        (on.FoundLifted, on.WaitsKept) = (false, true);

        var results = await Task.WhenAll(
            TryAsync(() => SaveAsync(clinic, off)),
            TryAsync(() => AsStylistAsync<Rebond, Rebond.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), on, Cancellation)))
        );

        Assert.Single(results, r => r is null);
        Assert.Single(results, r => r is Refusal or OvertakenException);
        Assert.Equal(1, await clinic.ReadAsync(db => db.VisitRecords.CountAsync(Cancellation)));
    }

    [Fact]
    public async Task A_trainee_takes_down_at_a_visit_of_their_own_only()
    {
        await using var clinic = await OpenAsync();
        var trainee = clinic.Acting(_scene.Trainee, _scene.Salon);
        Assert.Null(await clinic.UseAsync<Slice, Slice.Screen?>(trainee, s => s.OpenAsync(_scene.Visit.Id, Cancellation)));
        var input = await NormalAsync(clinic, RemovalReason.Rest);
        await Refused.SayingAsync("This visit is not in the book of your salons.", () => SaveAsync(clinic, input, _scene.Trainee));
        Assert.True((await BondAsync(clinic)).IsOpen);

        var own = Guid.CreateVersion7();
        await clinic.LayAsync(later =>
        {
            var visit = new Visit(own, _scene.Client.Id, _scene.Salon.Id, _scene.Visit.ServiceKindId);
            visit.PutAt(
                [(SegmentKind.HandsOn, 30)],
                later.Now + Duration.FromHours(2),
                _scene.Chair.Id,
                _scene.Trainee.Id,
                _scene.Salon,
                [Guid.CreateVersion7()]
            );
            later.Db.Visits.Add(visit);
        });
        input.VisitId = own;

        await SaveAsync(clinic, input, _scene.Trainee);

        Assert.False((await BondAsync(clinic)).IsOpen);
    }

    [Fact]
    public async Task What_was_typed_is_kept_until_it_is_saved()
    {
        await using var clinic = await OpenAsync();
        var input = await NormalAsync(clinic, RemovalReason.Operation);
        input.Note = "scan on Monday";
        await AsStylistAsync<Slice, bool>(
            clinic,
            async s =>
            {
                await s.KeepDraftAsync(input, Cancellation);
                return true;
            }
        );

        Assert.Equal(
            ("scan on Monday", RemovalReason.Operation),
            ((await ScreenAsync(clinic)).Draft!.Note, (await ScreenAsync(clinic)).Draft!.Because)
        );
        await SaveAsync(clinic, input);
        Assert.Equal(0, await clinic.ReadAsync(db => db.Drafts.CountAsync(Cancellation)));
    }

    [Fact]
    public async Task The_next_bond_is_warned_of_before_the_day_that_was_named_and_made_all_the_same()
    {
        await using var clinic = await OpenAsync();
        await clinic.LayAsync(_scene.BookNext);
        var input = await NormalAsync(clinic, RemovalReason.Skin);
        input.NoBondUntil = ChairScene.Today.PlusDays(3);
        await SaveAsync(clinic, input);

        var screen = (await AsStylistAsync<Rebond, Rebond.Screen?>(clinic, s => s.OpenAsync(_scene.Next.Id, Cancellation)))!;
        Assert.Equal(ChairScene.Today.PlusDays(3), screen.NoBondUntil);
        screen.Start.WaitsKept = true;
        await AsStylistAsync<Rebond, Rebond.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), screen.Start, Cancellation));

        Assert.Equal(2, await clinic.ReadAsync(db => db.Bonds.CountAsync(Cancellation)));
    }

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private Task<TestClinic> OpenAsync() =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                _scene.Lay(scene);
                LayRemover(scene);
            }
        );

    private void LayRemover(Scene scene)
    {
        _remover = scene.AddProduct("Remover R", ProductKind.Remover, "citrus");
        _expired = _remover.ReceiveLot(Guid.CreateVersion7(), "R-0", ChairScene.Today.PlusDays(-1));
    }

    private Task<T> AsStylistAsync<TSlice, T>(TestClinic clinic, Func<TSlice, Task<T>> call)
        where TSlice : notnull => clinic.UseAsync(clinic.Acting(_scene.Stylist, _scene.Salon), call);

    private async Task<Slice.Screen> ScreenAsync(TestClinic clinic) =>
        Assert.IsType<Slice.Screen>(await AsStylistAsync<Slice, Slice.Screen?>(clinic, s => s.OpenAsync(_scene.Visit.Id, Cancellation)));

    // As it opens, with the two questions answered that are never answered for the stylist.
    private async Task<Slice.Input> NormalAsync(TestClinic clinic, RemovalReason because)
    {
        var input = (await ScreenAsync(clinic)).Start;
        (input.Because, input.FoundLifted) = (because, false);
        return input;
    }

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input, Person? by = null, Guid? key = null) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(by ?? _scene.Stylist, _scene.Salon),
            s => s.SaveAsync(key ?? Guid.CreateVersion7(), input, Cancellation)
        );

    private static async Task<Exception?> TryAsync(Func<Task> act)
    {
        try
        {
            await act();
            return null;
        }
        catch (Exception e)
        {
            return e;
        }
    }

    private static Task<Bond> BondAsync(TestClinic clinic) => clinic.ReadAsync(db => db.Bonds.AsNoTracking().SingleAsync(Cancellation));

    private Task<(UnitState, VisitState)> StatesAsync(TestClinic clinic) =>
        clinic.ReadAsync(async db =>
            (
                await db.HairSystems.Where(u => u.Id == _scene.Worn.Id).Select(u => u.State).SingleAsync(Cancellation),
                await db.Visits.Where(v => v.Id == _scene.Visit.Id).Select(v => v.State).SingleAsync(Cancellation)
            )
        );
}
