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
        var screen = await book.ReadAsync(current.Client, now, cancellation);
        return screen is null ? null : screen with { Now = now, ShowsLetters = screen.IsDemo && mail.Host is null };
    }

    private static LocalDateTime Zoned(Instant instant, string zone) => instant.InZone(DateTimeZoneProviders.Tzdb[zone]).LocalDateTime;

    /// <summary>Its values, and those of the records in it, are the columns of <c>own_page</c>.</summary>
    /// <param name="Zone">The home salon's.</param>
    /// <param name="HasPhotos">Photos are shared with them.</param>
    /// <param name="HasConsents">Something is written down that they agreed to or took back.</param>
    /// <param name="WasSeen">The access log has a line about them.</param>
    /// <param name="OpensAll">False where the address they came by is not confirmed yet: dates only.</param>
    /// <param name="IsDemo">The practice is the invented one.</param>
    public sealed record Screen(
        string Name,
        string Salon,
        string? SalonPhone,
        string Zone,
        OwnBond? Bond,
        Booked? Visit,
        OwnUnit? Coming,
        bool HasPhotos,
        bool HasConsents,
        bool WasSeen,
        bool OpensAll,
        bool IsDemo
    )
    {
        public Instant Now { get; init; }

        /// <summary>The demo, whose letters anybody reads.</summary>
        public bool ShowsLetters { get; init; }

        public LocalDate Today => Zoned(Now, Zone).Date;

        public BondState? State => Bond?.StateOn(Today, Now);
    }

    /// <param name="AppliedAt">Null where only the day of the bond is known.</param>
    public sealed record OwnBond(
        LocalDate OpensOn,
        LocalDate DueOn,
        LocalDate ClosesOn,
        IReadOnlyList<DueReason> Reasons,
        Instant? AppliedAt,
        LocalDate? LiftedOn,
        int CureHours,
        int? LabelCureHours
    )
    {
        /// <summary>What is due is a take-down without a new bond.</summary>
        public bool IsTakeDown => Reasons.AskForTakeDown();

        private Cure Cure => DueCalculator.CureOf(CureHours, LabelCureHours);

        public Instant? CuredAt => AppliedAt is { } applied ? Cure.EndsAt(applied) : null;

        public BondState StateOn(LocalDate today, Instant now) =>
            new BondDates(OpensOn, ClosesOn)
            {
                AppliedAt = AppliedAt,
                Cure = Cure,
                LiftedOn = LiftedOn,
            }.StateOn(today, now);
    }

    /// <param name="MoveHours">How long before at the latest it can still be moved or called off here.</param>
    public sealed record Booked(Guid Id, Instant StartsAt, string Zone, string Salon, VisitState State, int MoveHours)
    {
        /// <summary>On the salon's own clock.</summary>
        public LocalDateTime At => Zoned(StartsAt, Zone);

        public bool MayChange(Instant now) => SelfBookingRule.MayChange(State, StartsAt, MoveHours, now);
    }

    /// <summary>A unit that is ordered or here and not yet worn.</summary>
    /// <param name="PromisedFor">The newest promise.</param>
    public sealed record OwnUnit(UnitState State, LocalDate? PromisedFor)
    {
        /// <summary>A promise is told only while something is awaited and the day is not past.</summary>
        public LocalDate? UpcomingPromise(LocalDate today) => State.IsInFlight() && PromisedFor >= today ? PromisedFor : null;
    }
}
