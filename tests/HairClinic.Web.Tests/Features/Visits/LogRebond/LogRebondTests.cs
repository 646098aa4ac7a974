using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Visits.LogRebond;

namespace HairClinic.Web.Tests.Features.Visits.LogRebond;

public sealed class LogRebondTests(PgServer server)
{
    private ChairScene _scene = new();

    [Fact]
    public async Task A_normal_rebond_closes_the_old_bond_and_dates_the_new_one_with_its_reason()
    {
        await using var clinic = await OpenAsync();

        var outcome = await SaveAsync(clinic, await NormalAsync(clinic));

        var bonds = await BondsAsync(clinic);
        Assert.Equal((ChairScene.Today, RemovalReason.Scheduled), (bonds[0].RemovedOn, bonds[0].RemovedBecause));
        Assert.Equal(new HoldObservation(HoldCensoring.AtLeast, 29, null), HoldObservation.From(bonds[0], ChairScene.Today));
        Assert.True(bonds[1].IsOpen);
        Assert.Equal((TestClinic.UsualNow, _scene.Visit.Id), (bonds[1].AppliedAt, bonds[1].VisitId));
        Assert.Equal((bonds[1].OpensOn, bonds[1].DueOn, bonds[1].ClosesOn), (outcome.OpensOn, outcome.DueOn, outcome.ClosesOn));
        // French lace holds three to five weeks by the practice's row.
        Assert.Equal((ChairScene.Today.PlusWeeks(3), ChairScene.Today.PlusWeeks(5)), (outcome.OpensOn, outcome.ClosesOn));
        Assert.NotEmpty(outcome.Why);
        Assert.Equal(TestClinic.UsualNow + Duration.FromHours(24), outcome.CuredAt);
        Assert.Equal(VisitState.Done, await clinic.ReadAsync(db => db.Visits.Select(v => v.State).SingleAsync(Cancellation)));
    }

    [Fact]
    public async Task The_form_opens_with_the_unit_and_recipe_of_last_time_and_a_lot_that_may_still_be_used()
    {
        await using var clinic = await OpenAsync();

        var screen = await ScreenAsync(clinic);

        Assert.Equal(_scene.Worn.Id, screen.Start.UnitId);
        // The bond was made from the lot that expired yesterday.
        Assert.Equal(
            (_scene.Adhesive.Id, _scene.Open.Id, 3),
            (screen.Start.Products[0].ProductId, screen.Start.Products[0].LotId!.Value, screen.Start.Products[0].Coats!.Value)
        );
        Assert.Equal(InspectionGrades.NotLookedAt, screen.Start.Grades());
        Assert.Null(screen.Start.FoundLifted);
        Assert.Null(screen.Start.WaitsKept);
        Assert.Equal([_scene.Worn.Serial, _scene.Spare.Serial], screen.Units.Select(u => u.Serial));
    }

    [Fact]
    public async Task What_the_last_take_down_found_stands_beside_the_grades_and_is_not_filled_in()
    {
        await using var clinic = await OpenAsync();
        var input = await NormalAsync(clinic);
        input.Knots = 2;
        await SaveAsync(clinic, input);
        await clinic.LayAsync(_scene.BookNext);

        var screen = await ScreenAsync(clinic, _scene.Next.Id);

        Assert.Equal(InspectionGrades.NotLookedAt, screen.Start.Grades());
        Assert.Equal((InspectionGrades.NotLookedAt with { Knots = 2 }, ChairScene.Today), (screen.Worn!.Last!.Grades, screen.Worn.Last.On));
    }

    [Fact]
    public async Task A_form_on_which_no_grade_was_touched_writes_none()
    {
        await using var clinic = await OpenAsync();

        await SaveAsync(clinic, await NormalAsync(clinic));

        var record = await clinic.ReadAsync(db => db.VisitRecords.AsNoTracking().SingleAsync(Cancellation));
        Assert.Equal((InspectionGrades.NotLookedAt, null), (record.Grades, record.GradesCopied));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Grades_are_kept_with_whether_they_were_copied(bool copied)
    {
        await using var clinic = await OpenAsync();
        var input = await NormalAsync(clinic);
        input.SetGrades(new(1, null, 0, 2, null, 3), copied);

        await SaveAsync(clinic, input);

        var record = await clinic.ReadAsync(db => db.VisitRecords.AsNoTracking().SingleAsync(Cancellation));
        Assert.Equal((new InspectionGrades(1, null, 0, 2, null, 3), copied), (record.Grades, record.GradesCopied));
    }

    [Fact]
    public async Task One_that_was_unfit_last_time_wants_a_second_yes_though_nobody_looked_now()
    {
        await using var clinic = await OpenAsync();
        var input = await NormalAsync(clinic);
        (input.Base, input.Emergency) = (4, true);
        await SaveAsync(clinic, input);
        await clinic.LayAsync(_scene.BookNext);
        var next = (await ScreenAsync(clinic, _scene.Next.Id)).Start;
        (next.FoundLifted, next.WaitsKept) = (false, true);

        await Refused.SayingAsync(
            "Unit {0} is unfit. Bond the spare, or confirm that this is an emergency.",
            () => SaveAsync(clinic, next)
        );
        next.Emergency = true;

        Assert.True((await SaveAsync(clinic, next)).PlanReplacement);
    }

    [Fact]
    public async Task Since_when_an_edge_was_up_and_the_unit_looks_worn_out_is_kept()
    {
        await using var clinic = await OpenAsync();
        var input = await NormalAsync(clinic);
        (input.FoundLifted, input.LiftedSince, input.Base, input.WornOutSince) = (true, SinceWhen.TwoOrThreeDays, 3, SinceWhen.AboutAWeek);

        await SaveAsync(clinic, input);

        var record = await clinic.ReadAsync(db => db.VisitRecords.AsNoTracking().SingleAsync(Cancellation));
        Assert.Equal((SinceWhen.TwoOrThreeDays, SinceWhen.AboutAWeek), (record.LiftedSince, record.WornOutSince));
        var old = (await BondsAsync(clinic))[0];
        Assert.Equal(new HoldObservation(HoldCensoring.Between, 26, 27), HoldObservation.From(old, ChairScene.Today));
    }

    [Fact]
    public async Task Opening_takes_six_round_trips_at_most_and_saving_nine()
    {
        await using var clinic = await OpenAsync();
        await ScreenAsync(clinic);
        Assert.InRange(clinic.Commands.All.Count, 1, 6);
        var input = await NormalAsync(clinic);
        clinic.Commands.Clear();

        await SaveAsync(clinic, input);

        // Its own bonds, habits and what was learnt are three of them.
        Assert.InRange(clinic.Commands.All.Count, 1, 9);
    }

    [Fact]
    public async Task The_spare_goes_on_while_the_worn_unit_rests()
    {
        await using var clinic = await OpenAsync();
        var input = await NormalAsync(clinic);
        input.UnitId = _scene.Spare.Id;

        await SaveAsync(clinic, input);

        var states = await clinic.ReadAsync(db => db.HairSystems.OrderBy(u => u.Serial).Select(u => u.State).ToListAsync(Cancellation));
        Assert.Equal([UnitState.Resting, UnitState.Bonded], states);
    }

    [Fact]
    public async Task A_first_fitting_is_logged_without_a_take_down_and_asks_for_a_look_over_a_week_later()
    {
        _scene = new ChairScene { Bonded = false, Purpose = ServicePurpose.FirstFitting };
        await using var clinic = await OpenAsync();
        var input = (await ScreenAsync(clinic)).Start;
        input.WaitsKept = true;
        input.Products.Add(
            new Slice.ProductLine
            {
                ProductId = _scene.Adhesive.Id,
                LotId = _scene.Open.Id,
                Coats = 3,
            }
        );

        var outcome = await SaveAsync(clinic, input);

        Assert.Equal(ChairScene.Today.PlusDays(7), outcome.FollowUpOn);
        Assert.Single(await BondsAsync(clinic));
    }

    [Fact]
    public async Task Found_lifted_with_the_day_not_known_leaves_an_interval_to_learn_from()
    {
        await using var clinic = await OpenAsync();
        var input = await NormalAsync(clinic);
        (input.FoundLifted, input.LiftedSince, input.LiftZone) = (true, SinceWhen.NotKnown, LiftZone.Front);

        await SaveAsync(clinic, input);

        var old = (await BondsAsync(clinic))[0];
        Assert.Equal(RemovalReason.Lifted, old.RemovedBecause);
        Assert.Equal(new HoldObservation(HoldCensoring.Between, 0, 29), HoldObservation.From(old, ChairScene.Today));
    }

    [Fact]
    public async Task The_label_of_what_was_used_asks_for_a_longer_cure_and_gets_it()
    {
        await using var clinic = await OpenAsync();
        await clinic.ReadAsync(async db =>
        {
            var product = await db.Products.SingleAsync(p => p.Id == _scene.Adhesive.Id, Cancellation);
            product.Edit(product.Name, product.Kind, product.Chemistry, labelCureHours: 48);
            return await db.SaveChangesAsync(Cancellation);
        });

        var outcome = await SaveAsync(clinic, await NormalAsync(clinic));

        Assert.Equal((48, TestClinic.UsualNow + Duration.FromHours(48)), (outcome.CureHours, outcome.CuredAt));
    }

    [Fact]
    public async Task An_expired_lot_is_refused_in_a_sentence_and_nothing_is_saved()
    {
        await using var clinic = await OpenAsync();
        var input = await NormalAsync(clinic);
        input.Products[0].LotId = _scene.Expired.Id;

        var refusal = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, input));

        Assert.Equal("Lot {0} of {1} expired on {2}. Do not bond with it; choose another.", refusal.Sentence);
        Assert.Single(await BondsAsync(clinic));
    }

    [Fact]
    public async Task An_adhesive_without_its_lot_is_refused_while_it_has_open_lots()
    {
        await using var clinic = await OpenAsync();
        var input = await NormalAsync(clinic);
        input.Products[0].LotId = null;

        await Refused.SayingAsync(
            "Choose the lot of {0}, so that a bad one can be traced to every head it touched.",
            () => SaveAsync(clinic, input)
        );
    }

    [Fact]
    public async Task An_unfit_unit_wants_a_second_yes()
    {
        await using var clinic = await OpenAsync();
        var input = await NormalAsync(clinic);
        input.Base = 4;
        await Refused.SayingAsync(
            "Unit {0} is unfit. Bond the spare, or confirm that this is an emergency.",
            () => SaveAsync(clinic, input)
        );

        input.Emergency = true;

        Assert.True((await SaveAsync(clinic, input)).PlanReplacement);
    }

    [Fact]
    public async Task A_visit_of_yesterday_is_logged_on_its_own_day()
    {
        await using var clinic = await OpenAsync();
        clinic.Clock.AdvanceDays(1);
        var input = await NormalAsync(clinic);
        Assert.Equal(new LocalTime(10, 30), input.FinishedAt);

        await SaveAsync(clinic, input);

        Assert.Equal(ChairScene.Today, (await BondsAsync(clinic))[1].AppliedOn);
    }

    [Fact]
    public async Task A_visit_of_another_salon_is_not_there()
    {
        await using var clinic = await OpenAsync();
        var stranger = clinic.Acting(_scene.Colleague);

        Assert.Null(await clinic.UseAsync<Slice, Slice.Screen?>(stranger, s => s.OpenAsync(_scene.Visit.Id, Cancellation)));
    }

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private Task<TestClinic> OpenAsync() => TestClinic.OpenAsync(server, _scene.Lay);

    private async Task<Slice.Screen> ScreenAsync(TestClinic clinic, Guid? visitId = null)
    {
        var screen = await clinic.UseAsync<Slice, Slice.Screen?>(
            clinic.Acting(_scene.Stylist, _scene.Salon),
            s => s.OpenAsync(visitId ?? _scene.Visit.Id, Cancellation)
        );
        return Assert.IsType<Slice.Screen>(screen);
    }

    // As it opens, with the two questions answered that are never answered for the stylist.
    private async Task<Slice.Input> NormalAsync(TestClinic clinic)
    {
        var input = (await ScreenAsync(clinic)).Start;
        (input.FoundLifted, input.WaitsKept) = (false, true);
        return input;
    }

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(_scene.Stylist, _scene.Salon),
            s => s.SaveAsync(Guid.CreateVersion7(), input, Cancellation)
        );

    private static Task<List<Bond>> BondsAsync(TestClinic clinic) =>
        clinic.ReadAsync(db => db.Bonds.AsNoTracking().Include(b => b.Products).OrderBy(b => b.AppliedOn).ToListAsync(Cancellation));
}
