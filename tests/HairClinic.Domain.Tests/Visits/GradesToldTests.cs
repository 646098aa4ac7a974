using HairClinic.Domain.Bonding;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;

namespace HairClinic.Domain.Tests.Visits;

/// <summary>What a visit's record keeps of how a unit looked: what was said, and nothing that was not. Common practice, no source.</summary>
public sealed class GradesToldTests
{
    private readonly Head _head = new Head().At(28);

    [Fact]
    public void Nothing_graded_is_nothing_said()
    {
        _head.Rebond(Head.Sound(grades: InspectionGrades.NotLookedAt) with { GradesCopied = false });

        Assert.Equal((InspectionGrades.NotLookedAt, null), (Record.Grades, Record.GradesCopied));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    [InlineData(null)]
    public void It_keeps_whether_the_grades_were_copied_from_last_time(bool? copied)
    {
        _head.Rebond(Head.Sound(grades: new(1, null, 0, 0, null, null)) with { GradesCopied = copied });

        Assert.Equal(copied, Record.GradesCopied);
    }

    [Fact]
    public void One_that_was_unfit_last_time_and_was_not_looked_at_now_is_known_to_be_unfit()
    {
        var blank = Head.Sound(grades: InspectionGrades.NotLookedAt) with { GradesBefore = InspectionGrades.AsNew with { Fit = 4 } };

        Refused.Saying("Unit {0} is unfit. Bond the spare, or confirm that this is an emergency.", () => _head.Rebond(blank));
        Assert.Null(_head.Visit.Record);
        // Looked at again, and better than was written.
        Assert.True(_head.Rebond(blank with { Grades = InspectionGrades.NotLookedAt with { Fit = 2 } }).IsOpen);
        Assert.Equal(InspectionGrades.NotLookedAt with { Fit = 2 }, Record.Grades);
    }

    [Fact]
    public void Since_when_it_looks_worn_out_is_kept_of_one_that_does()
    {
        var worn = Head.Sound(grades: InspectionGrades.NotLookedAt with { Base = 3 }) with { WornOutSince = SinceWhen.AboutAWeek };
        _head.Rebond(worn);
        Assert.Equal((null, SinceWhen.AboutAWeek), (Record.WornOutOn, Record.WornOutSince));

        var known = new Head().At(28);
        known.Rebond(worn with { WornOutOn = known.Today.PlusDays(-4) });
        Assert.Equal((known.Today.PlusDays(-4), null), (known.Visit.Record!.WornOutOn, known.Visit.Record.WornOutSince));

        var sound = new Head().At(28);
        sound.Rebond(worn with { Grades = InspectionGrades.AsNew });
        Assert.Null(sound.Visit.Record!.WornOutSince);
    }

    [Fact]
    public void It_cannot_have_looked_worn_out_first_on_a_day_that_has_not_come()
    {
        var worn = Head.Sound(grades: InspectionGrades.NotLookedAt with { Base = 3 }) with { WornOutOn = _head.Today.PlusDays(1) };

        Refused.Saying("{0} is in the future: choose today or earlier.", () => _head.Rebond(worn));
        Assert.True(_head.Bond.IsOpen);
    }

    [Fact]
    public void About_when_an_edge_came_up_is_kept_as_it_was_said()
    {
        _head.Rebond(Head.Lifted(on: null) with { LiftedSince = SinceWhen.TwoOrThreeDays });
        Assert.Equal((true, null, SinceWhen.TwoOrThreeDays), (Record.FoundLifted, Record.LiftedOn, Record.LiftedSince));

        var washed = new Head().At(14);
        var edge = new EdgeFindings(Up: true, null, LiftZone.Front, SpotFixed: true) { Since = SinceWhen.TwoOrThreeDays };
        washed.Visit.RecordCare(Guid.CreateVersion7(), washed.Bond, edge, washed.Salon, washed.Now, Head.Stylist, null);
        Assert.Equal(SinceWhen.TwoOrThreeDays, washed.Visit.Record!.LiftedSince);
        Assert.Equal(new HoldObservation(HoldCensoring.Between, 11, 12), HoldObservation.From(washed.Bond, washed.Today));
    }

    private VisitRecord Record => _head.Visit.Record!;
}
