using HairClinic.Web.Data.Books;
using HairClinic.Web.Fence;
using HairClinic.Web.Mail;

namespace HairClinic.Web.Features.MyHair;

/// <summary>What a client sees of their own hair: when they are next due and why, when they come, and what may be done today.</summary>
public sealed class MyHair(OwnPageReader book, MailSettings mail, CurrentActor current, IClock clock)
{
    /// <summary>Whose page it is comes from the sign-in, never from the address.</summary>
    /// <returns>Null when the client is no longer there, or the sign-in no longer holds.</returns>
    public async Task<Screen?> OpenAsync(CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        if (await book.ReadAsync(current.Client, now, cancellation) is not { } facts)
            return null;
        var today = Zoned(now, facts.Zone).Date;
        return new Screen(facts.Name, today, now, facts.Salon, facts.Phone)
        {
            Bond = Own(facts.Bond, facts.CureHours, today, now),
            Visit = facts.Visit is { } visit
                ? new Booked(
                    visit.Id,
                    Zoned(visit.StartsAt, visit.Zone),
                    visit.Salon,
                    !visit.Arrived && visit.StartsAt - now >= Duration.FromHours(facts.MoveHours),
                    facts.MoveHours
                )
                : null,
            Coming = facts.Coming,
            HasPhotos = facts.HasPhotos,
            HasConsents = facts.HasConsents,
            WasSeen = facts.WasSeen,
            OpensAll = facts.OpensAll,
            ShowsLetters = facts.IsDemo && mail.Host is null,
        };
    }

    private static LocalDateTime Zoned(Instant instant, string zone) => instant.InZone(DateTimeZoneProviders.Tzdb[zone]).LocalDateTime;

    private static OwnBond? Own(OwnBondFacts? bond, int cureHours, LocalDate today, Instant now)
    {
        if (bond is null)
            return null;
        var cure = DueBasis.CureOf(cureHours, bond.LabelCureHours);
        var state = new BondDates(bond.OpensOn, bond.ClosesOn)
        {
            AppliedAt = bond.AppliedAt,
            Cure = cure,
            LiftedOn = bond.LiftedOn,
        }.StateOn(today, now);
        return new OwnBond(
            state,
            bond.OpensOn,
            bond.DueOn,
            bond.ClosesOn,
            bond.Reasons,
            bond.AppliedAt is { } applied ? cure.EndsAt(applied) : null,
            bond.AppliedAt
        );
    }

    public sealed record Screen(string Name, LocalDate Today, Instant Now, string Salon, string? SalonPhone)
    {
        public OwnBond? Bond { get; init; }

        public Booked? Visit { get; init; }

        public OwnUnitFacts? Coming { get; init; }

        public bool HasPhotos { get; init; }

        public bool HasConsents { get; init; }

        public bool WasSeen { get; init; }

        /// <summary>False where the address is not confirmed yet: dates only.</summary>
        public bool OpensAll { get; init; }

        /// <summary>The demo, whose letters anybody reads.</summary>
        public bool ShowsLetters { get; init; }
    }

    /// <param name="CuredAt">Null where only the day of the bond is known.</param>
    public sealed record OwnBond(
        BondState State,
        LocalDate OpensOn,
        LocalDate DueOn,
        LocalDate ClosesOn,
        IReadOnlyList<DueReason> Reasons,
        Instant? CuredAt,
        Instant? AppliedAt
    );

    /// <param name="At">On the salon's own clock.</param>
    /// <param name="MayChange">Whether it can still be moved or called off here, <paramref name="MoveHours"/> before at the latest.</param>
    public sealed record Booked(Guid VisitId, LocalDateTime At, string Salon, bool MayChange, int MoveHours);
}
