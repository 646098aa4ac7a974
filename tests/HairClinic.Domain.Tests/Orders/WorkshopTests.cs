using HairClinic.Domain.Orders;
using NodaTime;

namespace HairClinic.Domain.Tests.Orders;

/// <summary>What a workshop's row takes. Common practice, no source.</summary>
public sealed class WorkshopTests
{
    private static readonly LocalDate Day = new(2027, 2, 3);

    private readonly Workshop _north = new(Guid.CreateVersion7(), " Workshop North ");

    [Fact]
    public void Up_to_half_of_its_orders_are_made_again_within_sixty_days()
    {
        Assert.Equal(("Workshop North", 1, 7), (_north.Name, _north.RemadeOfTwenty, _north.InspectionDays));
        foreach (var (remade, days) in new[] { (0, 0), (10, 60) })
        {
            _north.SetRemakesAndInspection(remade, days);
            Assert.Equal((remade, days), (_north.RemadeOfTwenty, _north.InspectionDays));
        }
        foreach (var remade in new[] { -1, 11 })
            Refused.Saying("Of twenty orders 0 to 10 are made again.", () => _north.SetRemakesAndInspection(remade, 7));
        foreach (var days in new[] { -1, 61 })
            Refused.Saying("A unit is inspected and sent back within 0 to 60 days.", () => _north.SetRemakesAndInspection(1, days));
        Assert.Equal((10, 60), (_north.RemadeOfTwenty, _north.InspectionDays));
    }

    [Fact]
    public void A_closure_ends_on_the_day_it_starts_or_later_and_is_opened_again_alone()
    {
        var (one, other) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        Refused.Saying("The closure ends before it starts.", () => _north.AddClosure(one, Day, Day.PlusDays(-1), "Holidays"));
        _north.AddClosure(one, Day, Day, "Holidays");
        _north.AddClosure(other, Day.PlusDays(30), Day.PlusDays(44), "New year");

        _north.RemoveClosure(one);

        Assert.Equal(
            [(other, Day.PlusDays(30), Day.PlusDays(44), "New year")],
            _north.Closures.Select(c => (c.Id, c.From, c.To, c.Reason))
        );
    }

    [Fact]
    public void One_that_retires_is_retired()
    {
        Assert.False(_north.Retired);
        _north.Retire();
        Assert.True(_north.Retired);
    }
}
