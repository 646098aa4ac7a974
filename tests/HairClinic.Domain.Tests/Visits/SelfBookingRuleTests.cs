using HairClinic.Domain.Visits;
using NodaTime;

namespace HairClinic.Domain.Tests.Visits;

public sealed class SelfBookingRuleTests
{
    private static readonly Instant Start = Instant.FromUtc(2027, 2, 12, 10, 0);

    [Theory]
    [InlineData(VisitState.Booked, 0, true)]
    [InlineData(VisitState.Booked, 1, false)]
    [InlineData(VisitState.Arrived, -3600, false)]
    [InlineData(VisitState.Cancelled, -3600, false)]
    public void A_client_changes_a_booked_visit_until_the_last_second_of_the_hours_before(VisitState state, int secondsLate, bool may)
    {
        var now = Start - Duration.FromHours(24) + Duration.FromSeconds(secondsLate);

        Assert.Equal(may, SelfBookingRule.MayChange(state, Start, hoursBefore: 24, now));
    }
}
