using HairClinic.Web.Features.Binder;

namespace HairClinic.Web.Demo;

/// <summary>One invented bond: what the book says of it, and how long it truly holds.</summary>
/// <param name="HoldDays">From the time of its application; the salon sees only what it sees.</param>
/// <param name="Rings">The client rings on the day an edge comes up.</param>
/// <param name="Remembers">Asked at the next visit, the client knows the day.</param>
public sealed record DemoBond(DemoUnit Unit, BondRow Row, double HoldDays, bool Rings, bool Remembers)
{
    public LocalDate AppliedOn => Row.AppliedOn!.Value;

    /// <summary>The civil day an edge comes up: bonds are made about noon, so whole days are rounded.</summary>
    public LocalDate LiftsOn => AppliedOn.PlusDays((int)Math.Round(HoldDays));

    public bool HasLiftedBy(LocalDate day) => HoldDays <= Period.DaysBetween(AppliedOn, day);

    /// <summary>Seen at a visit that leaves it on: sound, or found up and told today.</summary>
    public DemoBond WithVisitCheck(LocalDate day, Random random) =>
        !HasLiftedBy(day) ? this with { Row = Row with { LastSoundOn = day } } : Lifted(day, random);

    /// <summary>Told by phone, where the client rings and has by then.</summary>
    public DemoBond WithPhoneReport(LocalDate day, Random random) => Rings && LiftsOn <= day ? Lifted(day, random) : this;

    public DemoBond WithRemoval(LocalDate day, RemovalReason because, Random random)
    {
        var seen = HasLiftedBy(day) ? Lifted(day, random) : this;
        return seen with
        {
            Row = seen.Row with
            {
                RemovedOn = day,
                RemovedBecause = HasLiftedBy(day) ? RemovalReason.Lifted : because,
                LastSoundOn = HasLiftedBy(day) ? Row.LastSoundOn : day,
            },
        };
    }

    // Only the first telling counts.
    private DemoBond Lifted(LocalDate day, Random random) =>
        Row.LiftReportedOn is not null
            ? this
            : this with
            {
                Row = Row with
                {
                    LiftedOn = Rings || Remembers ? LiftsOn : null,
                    LiftReportedOn = Rings ? LiftsOn : day,
                    LiftZone = (LiftZone)random.Next(5),
                },
            };
}
