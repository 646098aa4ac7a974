using HairClinic.Domain.Chairs;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using NodaTime;

namespace HairClinic.Domain.Tests.Visits;

/// <summary>Givens: visits of one client in an invented salon.</summary>
internal static class Booked
{
    public static readonly LocalDate Day = new(2027, 2, 4);
    private static readonly Salon Salon = new(Guid.CreateVersion7(), "Elm Row", "Europe/London", "GBP");

    public static Instant At(int hour, int minute = 0) => (Day + new LocalTime(hour, minute)).InUtc().ToInstant();

    public static Visit From(Instant start, params (SegmentKind Kind, int Minutes)[] steps)
    {
        var visit = new Visit(Guid.CreateVersion7(), Guid.CreateVersion7(), Salon.Id, Guid.CreateVersion7());
        Place(visit, start, steps);
        return visit;
    }

    public static Visit Hour(int hour, int minute = 0) => From(At(hour, minute), (SegmentKind.HandsOn, 60));

    public static void Place(Visit visit, Instant start, params (SegmentKind Kind, int Minutes)[] steps) =>
        visit.PutAt(steps, start, Guid.CreateVersion7(), Guid.CreateVersion7(), Salon, [.. steps.Select(_ => Guid.CreateVersion7())]);
}
