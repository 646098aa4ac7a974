using CsCheck;
using HairClinic.Domain.Chairs;
using NodaTime;

namespace HairClinic.Domain.Tests.Chairs;

/// <summary>Small invented salons, two days long, for properties of the free-slot search.</summary>
internal static class SlotFacts
{
    private static readonly Instant Midnight = Instant.FromUtc(2026, 3, 3, 0, 0);
    private static readonly Guid Bonding = new("00000000-0000-0000-0000-0000000000ff");

    // Five-minute bookings beside a quarter-hour grid, so that edges meet and miss each other.
    private static readonly Gen<Interval> Busy = Gen.Select(
        Gen.Int[0, 2 * 288 - 1],
        Gen.Int[1, 30],
        (start, length) => new Interval(Minute(5 * start), Minute(5 * (start + length)))
    );

    private static readonly Gen<Interval[]> Hours = Gen.Select(
        Gen.Int[28, 48],
        Gen.Int[50, 60],
        Gen.Int[60, 66],
        Gen.Int[66, 96],
        (opens, lunch, back, closes) =>
            new[] { 0, 24 * 60 }
                .SelectMany(day =>
                    new Interval[]
                    {
                        new(Minute(day + 15 * opens), Minute(day + 15 * lunch)),
                        new(Minute(day + 15 * back), Minute(day + 15 * closes)),
                    }
                )
                .ToArray()
    );

    private static readonly Gen<ServiceSegment[]> Segments = Gen.Select(
        Gen.Enum<SegmentKind>(),
        Gen.Int[1, 12],
        (kind, fives) => new ServiceSegment(kind, 5 * fives)
    ).Array[1, 5];

    private static readonly Gen<PersonSchedule> Person = Gen.Select(
        Gen.Guid,
        Hours,
        Busy.Array[0, 12],
        Gen.Int[0, 3],
        (id, hours, busy, luck) => new PersonSchedule(id, hours, busy, luck > 0 ? new HashSet<Guid> { Bonding } : [])
    );

    public static Gen<SlotQuery> Any { get; } =
        from segments in Segments
        from open in Hours
        from chairs in Gen.Select(Gen.Guid, Busy.Array[0, 12]).Array[0, 3]
        from people in Person.Array[0, 3]
        from client in Busy.Array[0, 4]
        from window in Gen.Select(Gen.Int[0, 2000], Gen.Int[0, 2880])
        from target in Gen.Int[0, 2880]
        from step in Gen.Int[1, 6]
        from near in Gen.Int[0, 6]
        from best in Gen.Int[1, 6]
        from wished in Gen.Int[0, 3]
        select new SlotQuery
        {
            Service = new(segments),
            From = Minute(window.Item1),
            To = Minute(window.Item1 + window.Item2),
            Target = Minute(target),
            Open = open,
            Chairs = [.. chairs.Select(chair => new ChairBusyTimes(chair.Item1, chair.Item2))],
            People = people,
            ClientBusy = client,
            SkillsNeeded = [Bonding],
            PreferredPerson = wished < people.Length ? people[wished].PersonId : null,
            Step = Duration.FromMinutes(5 * step),
            NearEnough = Duration.FromHours(near),
            Best = best,
        };

    public static Instant Minute(int minute) => Midnight + Duration.FromMinutes(minute);
}
