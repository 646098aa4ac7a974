using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Replacement;
using NodaTime;

namespace HairClinic.Domain.Tests.Replacement;

/// <summary>Common practice, no source.</summary>
public sealed class RepeatOrderRuleTests
{
    private static readonly LocalDate Today = new(2027, 2, 3);

    [Fact]
    public void The_newest_that_is_more_than_a_draft_is_repeated()
    {
        var (first, second, draft) = (Ordered("U-1"), Ordered("U-2"), Draft("U-3"));
        var calledOff = Ordered("U-4");
        calledOff.LeaveService(UnitState.Cancelled, Today, "twice");

        Assert.Same(second, RepeatOrderRule.UnitToRepeat([first, second, draft, calledOff]));
        Assert.Null(RepeatOrderRule.UnitToRepeat([draft]));
    }

    [Fact]
    public void A_ready_made_one_is_repeated_by_who_never_had_another()
    {
        var (made, shelf) = (Ordered("U-1"), InHouse(UnitOrigin.ReadyMade));

        Assert.Same(made, RepeatOrderRule.UnitToRepeat([made, shelf]));
        Assert.Same(shelf, RepeatOrderRule.UnitToRepeat([shelf]));
        var bought = InHouse(UnitOrigin.BoughtElsewhere);
        Assert.Same(bought, RepeatOrderRule.UnitToRepeat([made, bought]));
    }

    private static HairSystem Draft(string serial) =>
        new(Guid.CreateVersion7(), serial, Guid.CreateVersion7(), Guid.CreateVersion7(), Today);

    private static HairSystem Ordered(string serial)
    {
        var unit = Draft(serial);
        unit.Order(Today);
        return unit;
    }

    private static HairSystem InHouse(UnitOrigin origin) =>
        HairSystem.AddToBook(
            Guid.CreateVersion7(),
            "N-1",
            Guid.CreateVersion7(),
            Guid.CreateVersion7(),
            origin,
            Today,
            Today.PlusDays(-9),
            Guid.CreateVersion7()
        );
}
