using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Grades;
using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Web.Learning;
using NodaTime;

namespace HairClinic.Web.Tests.Learning;

public sealed class GradeLearnerTests
{
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);
    private static readonly Dictionary<KnownCovariate, double> NoFactors = [];
    private static readonly LocalDate Day = new(2027, 2, 3);

    [Theory]
    [InlineData(20, 29, false)]
    [InlineData(20, 30, true)]
    public void What_was_learnt_a_day_ago_stands_unless_half_as_many_again_have_ended_since(int then, int now, bool anew)
    {
        var last = Learn(then, null, Day.PlusDays(-1));
        var next = Learn(now, last, Day);

        Assert.Equal((Day.PlusDays(-1), then), (last.GradesLearntOn, last.GradedEnded));
        Assert.Equal(anew ? (Day, now) : (Day.PlusDays(-1), then), (next.GradesLearntOn, next.GradedEnded));
    }

    /// <summary>As where of the latest units of a large practice nearly all are in wear.</summary>
    [Fact]
    public void A_few_more_of_too_few_to_tell_are_no_other_book()
    {
        var last = Learn(20, null, Day.PlusDays(-1));
        last.RecordGrades(GradeLink.FromParameters(last.GradeLinkParameters), new GradeGate(3, 0), Day.PlusDays(-1));

        Assert.Equal(Day.PlusDays(-1), Learn(22, last, Day).GradesLearntOn);
        Assert.Equal(Day, Learn(23, last, Day).GradesLearntOn);
    }

    [Fact]
    public void What_told_nothing_is_learnt_anew_after_a_fortnight()
    {
        var last = Learn(20, null, Day.PlusDays(-14));

        Assert.False(last.GradesTell);
        Assert.Equal(Day, Learn(20, last, Day).GradesLearntOn);
    }

    private static StoredFit Learn(int units, StoredFit? last, LocalDate day)
    {
        var lives = Enumerable.Range(0, units).Select(Life).ToList();
        var fit = WearModelFitter.FitLives(lives, NoFactors, day, default);
        GradeLearner.Learn(fit, last, lives, NoFactors);
        return fit;
    }

    // Always the same grades, whenever it ended: they tell nothing.
    private static LifeSpell Life(int unit)
    {
        var lasts = 180 + 3 * unit;
        return new LifeSpell(
            new Guid(unit, 1, 0, new byte[8]),
            Guid.Empty,
            Guid.Empty,
            null,
            lasts,
            WornOut: true,
            new Guid(unit, 2, 0, new byte[8]),
            Spell.FromBounds(lasts - 14, lasts),
            Window,
            []
        )
        {
            FirstWornOn = Day.PlusDays(-400),
            Grades =
            [
                new(60, InspectionGrades.AsNew with { Shedding = 1 }, Copied: false, Grader: null),
                new(120, InspectionGrades.AsNew with { Shedding = 1 }, Copied: false, Grader: null),
            ],
        };
    }
}
