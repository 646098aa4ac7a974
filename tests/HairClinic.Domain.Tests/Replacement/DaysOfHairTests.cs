using CsCheck;
using HairClinic.Domain.Replacement;
using NodaTime;

namespace HairClinic.Domain.Tests.Replacement;

/// <summary>Day by day it is the same as in gaps.</summary>
public sealed class DaysOfHairTests
{
    private static readonly LocalDate From = new(2026, 2, 1);
    private static readonly LocalDate Through = new(2026, 9, 30);

    [Fact]
    public void Days_add_up_to_the_gaps_and_to_the_days_watched() =>
        Gen.Select(
                Gen.Select(Gen.Int[-60, 240], Gen.Int[0, 60]).Array[0, 5],
                Gen.Select(Gen.Int[-60, 240], Gen.Int[0, 90], Gen.Bool).Array[0, 4],
                Gen.Int[0, 400]
            )
            .Sample(
                (bonds, units, left) =>
                {
                    var hair = new HairHistory(
                        [.. bonds.Select(b => (From.PlusDays(b.Item1), (LocalDate?)From.PlusDays(b.Item1 + b.Item2)))],
                        [
                            .. units.Select(u => new UnitAvailability
                            {
                                ReadyOn = From.PlusDays(u.Item1),
                                GoneOn = From.PlusDays(u.Item1 + u.Item2),
                                IsAtHome = u.Item3,
                            }),
                        ],
                        left < 240 ? From.PlusDays(left) : null
                    );

                    var days = GapFinder.Days(hair, From, Through);
                    var found = GapFinder.Find(hair, From, Through);

                    Assert.Equal(Period.DaysBetween(From, Through) + 1, days.Length);
                    Assert.Equal(found.DaysWatched, days.Count(d => d != DayOfHair.NotWatched));
                    Assert.Equal(found.Gaps.Sum(g => g.Days), days.Count(d => d == DayOfHair.Without));
                    Assert.All(found.Gaps, g => Assert.Equal(DayOfHair.Without, days[Period.DaysBetween(From, g.Through)]));
                },
                iter: 5000
            );
}
