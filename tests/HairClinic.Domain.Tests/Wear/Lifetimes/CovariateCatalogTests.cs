using HairClinic.Domain.Clients;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>Which habits shorten a bond's hold and which a unit's life: common practice, no source.</summary>
public sealed class CovariateCatalogTests
{
    private static readonly LocalDate Day = new(2027, 2, 3);

    [Fact]
    public void Every_habit_has_one_row_and_bears_on_something()
    {
        Assert.Equal(Enum.GetValues<KnownCovariate>(), CovariateCatalog.All.Select(r => r.Habit).Order());
        Assert.All(CovariateCatalog.All, r => Assert.True(r.OnHold is not null || r.OnLife is not null));
    }

    [Fact]
    public void Skin_sweat_swims_and_washes_bear_on_a_hold() =>
        Assert.Equal(
            [
                (KnownCovariate.OilySkin, 1),
                (KnownCovariate.HeavySweat, 1),
                (KnownCovariate.DailySwim, 2 / 7.0),
                (KnownCovariate.DailyWash, 1),
            ],
            CovariateCatalog.ValuesFromHabits(Habits(SkinOiliness.Oily, Sweating.Heavy, swims: 2, washes: 7, heat: 3), LifetimeKind.Hold)
        );

    [Fact]
    public void Washes_heat_and_swims_bear_on_a_life() =>
        Assert.Equal(
            [(KnownCovariate.DailySwim, 2 / 7.0), (KnownCovariate.DailyWash, 1), (KnownCovariate.DailyHeat, 3 / 7.0)],
            CovariateCatalog.ValuesFromHabits(Habits(SkinOiliness.Oily, Sweating.Heavy, swims: 2, washes: 7, heat: 3), LifetimeKind.Life)
        );

    [Theory]
    [InlineData(SkinOiliness.Dry, Sweating.Normal)]
    [InlineData(null, null)]
    public void What_is_usual_not_known_or_never_done_bears_on_nothing(SkinOiliness? skin, Sweating? sweat)
    {
        Assert.Empty(CovariateCatalog.ValuesFromHabits(Habits(skin, sweat, swims: 0, washes: null, heat: 7), LifetimeKind.Hold));
        Assert.Empty(CovariateCatalog.ValuesFromHabits(Habits(skin, sweat, swims: null, washes: 0, heat: 0), LifetimeKind.Life));
    }

    [Fact]
    public void What_was_known_on_a_day_are_the_newest_facts_up_to_it()
    {
        var (old, recent) = (Fact(Day.PlusDays(-30)), Fact(Day));
        CareFact[] facts = [recent, old];

        Assert.Same(recent, CovariateCatalog.FactAsOf(facts, Day));
        Assert.Same(old, CovariateCatalog.FactAsOf(facts, Day.PlusDays(-1)));
        Assert.Same(old, CovariateCatalog.FactAsOf(facts, Day.PlusDays(-30)));
        Assert.Null(CovariateCatalog.FactAsOf(facts, Day.PlusDays(-31)));
    }

    private static CareFact Fact(LocalDate asOf) => new(Guid.CreateVersion7(), Guid.CreateVersion7(), asOf, new());

    private static CareHabits Habits(SkinOiliness? skin, Sweating? sweat, decimal? swims, decimal? washes, decimal? heat) =>
        new()
        {
            Skin = skin,
            Sweat = sweat,
            SwimsPerWeek = swims,
            WashesPerWeek = washes,
            HeatPerWeek = heat,
        };
}
