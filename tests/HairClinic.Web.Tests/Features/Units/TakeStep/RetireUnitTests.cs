using HairClinic.Domain.Bonding;
using HairClinic.Domain.Chairs;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Web.Learning;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Units.TakeStep;
using Undo = HairClinic.Web.Features.Units.TakeBackStep;

namespace HairClinic.Web.Tests.Features.Units.TakeStep;

/// <summary>Whoever retires a unit is asked how it looks, and what they say is what its life row says.</summary>
public sealed class RetireUnitTests(PgServer server)
{
    private static readonly LocalDate Today = UnitBook.Today;
    private HairSystem _unit = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    // On a head for 35 days, and sound when it was bonded.
    [Theory]
    [InlineData(UnitCondition.WornOut, null)]
    [InlineData(UnitCondition.NotSaid, 3)]
    public async Task Worn_out_it_ended_by_the_last_day_it_was_worn(UnitCondition condition, int? grade)
    {
        await using var book = await OpenAsync();

        await RetireAsync(book, i => (i.EndCondition, i.Grades) = (condition, InspectionGrades.NotLookedAt with { Fit = grade }));

        var life = await LifeAsync(book);
        Assert.Equal((Spell.LeftCensored(35), true), (life.Spell, life.WornOut));
    }

    [Fact]
    public async Task Still_wearable_it_lasted_at_least_so_long()
    {
        await using var book = await OpenAsync();

        await RetireAsync(book, i => i.EndCondition = UnitCondition.StillWearable);

        Assert.Equal(Spell.RightCensored(35), (await LifeAsync(book)).Spell);
    }

    [Fact]
    public async Task Left_open_nothing_is_known_beyond_the_last_look()
    {
        await using var book = await OpenAsync();

        await RetireAsync(book, _ => { });

        var stored = await book.UnitAsync(_unit);
        Assert.Equal(new UnitEndLook(UnitCondition.NotSaid, book.Desk.Id), stored.EndLook);
        Assert.Equal(Spell.RightCensored(0), (await LifeAsync(book)).Spell);
        Assert.Equal([OfTheTakeDown(book)], (await LifeAsync(book)).Grades);
    }

    [Fact]
    public async Task Its_grades_and_since_when_it_looks_so_are_kept_with_who_looked()
    {
        await using var book = await OpenAsync();
        var grades = new InspectionGrades(1, 3, null, 0, 4, 2);

        await RetireAsync(book, i => (i.Grades, i.WornOutSince) = (grades, SinceWhen.AboutAWeek));

        var look = (await book.UnitAsync(_unit)).EndLook!;
        Assert.Equal((grades, false, SinceWhen.AboutAWeek, book.Desk.Id), (look.Grades, look.GradesCopied, look.WornOutSince, look.By));
        // Off for five days: about a week ago it was in its last days on the head.
        var life = await LifeAsync(book);
        Assert.Equal(Spell.FromBounds(31, 35), life.Spell);
        Assert.Equal([OfTheTakeDown(book), new GradedLook(35, grades, false, book.Desk.Id)], life.Grades);
    }

    [Fact]
    public async Task What_contradicts_itself_is_refused_and_undone_it_is_as_if_nobody_had_said_so()
    {
        await using var book = await OpenAsync();
        await book.RefusedAsync(
            "Worn out means 3 or 4 for shedding, knots, base or fit. Change a grade, or say that it still wears.",
            () => RetireAsync(book, i => (i.EndCondition, i.Grades) = (UnitCondition.WornOut, InspectionGrades.AsNew))
        );
        await RetireAsync(book, i => i.EndCondition = UnitCondition.WornOut);

        await book.Clinic.UseAsync<Undo, Undo.Outcome>(book.AtDesk, s => UndoAsync(s, _unit.Id));

        Assert.Equal((UnitState.Resting, null), ((await book.UnitAsync(_unit)).State, (await book.UnitAsync(_unit)).EndLook));
    }

    [Fact]
    public async Task The_form_opens_with_nothing_said_and_what_its_take_downs_found_beside()
    {
        await using var book = await OpenAsync();

        var screen = await book.Clinic.UseAsync<Slice, Slice.Screen?>(
            book.AtDesk,
            s => s.OpenAsync(_unit.Id, UnitStepKind.Retired, null, Cancel)
        );

        Assert.Equal((UnitCondition.NotSaid, InspectionGrades.NotLookedAt), (screen!.Start.EndCondition, screen.Start.Grades));
        Assert.Equal((InspectionGrades.NotLookedAt with { Base = 2 }, Today.PlusDays(-5)), (screen.Last!.Grades, screen.Last.On));
    }

    [Fact]
    public async Task A_lost_unit_is_gone_since_the_day_by_which_it_was()
    {
        await using var book = await OpenAsync();

        await book.TakeAsync(
            _unit,
            UnitStepKind.Lost,
            i => (i.On, i.Since, i.Note) = (null, SinceWhen.TwoOrThreeDays, "not in the drawer")
        );

        Assert.Equal(Today.PlusDays(-2), (await book.UnitAsync(_unit)).Dates.RetiredOn);
    }

    // Nobody said of it whether it was copied.
    private static GradedLook OfTheTakeDown(UnitBook book) =>
        new(35, InspectionGrades.NotLookedAt with { Base = 2 }, Copied: null, book.Stylist.Id);

    private Task<UnitBook> OpenAsync() =>
        UnitBook.OpenAsync(
            server,
            b =>
            {
                _unit = b.InHouse("U-1", b.Una);
                var bond = b.Scene.AddBond(b.Una, _unit, Today.PlusDays(-40), b.Adhesive);
                TakeDown(b, bond, Today.PlusDays(-5), InspectionGrades.NotLookedAt with { Base = 2 });
            }
        );

    private void TakeDown(UnitBook book, Bond bond, LocalDate day, InspectionGrades seen)
    {
        var visit = new Visit(Guid.CreateVersion7(), book.Una.Id, book.ElmRow.Id, book.Scene.ServiceWithPurpose(ServicePurpose.Rebond).Id);
        var at = day.At(new LocalTime(11, 0)).InUtc().ToInstant();
        visit.PutAt([(SegmentKind.HandsOn, 60)], at, chairId: null, personId: null, book.ElmRow, [Guid.CreateVersion7()]);
        var found = new TakeDown(seen, FoundLifted: false, null, null, RemovalReason.Rest);
        visit.RecordTakeDown(Guid.CreateVersion7(), (bond, _unit, found), [], null, book.ElmRow, at, book.Stylist.Id, note: null);
        book.Scene.Db.Visits.Add(visit);
    }

    private static async Task<Undo.Outcome> UndoAsync(Undo slice, Guid unitId)
    {
        var step = (await slice.OpenAsync(unitId, Cancel))!.Last!;
        return await slice.SaveAsync(
            Guid.CreateVersion7(),
            new Undo.Input
            {
                UnitId = unitId,
                StepId = step.Id,
                Because = "wrong unit",
            },
            Cancel
        );
    }

    private Task RetireAsync(UnitBook book, Action<Slice.Input> say) =>
        book.TakeAsync(
            _unit,
            UnitStepKind.Retired,
            i =>
            {
                i.Note = "shed";
                say(i);
            }
        );

    private Task<LifeSpell> LifeAsync(UnitBook book) =>
        book.Clinic.ReadAsync(async db => Assert.Single(await LifeSpellBuilder.LoadAsync(db, Today, [book.Una.Id], Cancel)));
}
