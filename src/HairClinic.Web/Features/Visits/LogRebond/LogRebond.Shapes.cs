using HairClinic.Web.Data.Books;

namespace HairClinic.Web.Features.Visits;

public sealed partial class LogRebond
{
    /// <param name="Day">The civil day the bond is made on.</param>
    /// <param name="Worn">What is on the head; null at a first fitting.</param>
    /// <param name="Start">The form as it opens: unit and recipe as last time, what must be asked left open.</param>
    /// <param name="Draft">What the same person typed before and did not send.</param>
    public sealed record Screen(
        Guid VisitId,
        VisitState State,
        string Service,
        Guid ClientId,
        string ClientName,
        string? ClientNote,
        string? VisitNote,
        LocalDate Day,
        LocalDate Today,
        string Zone,
        WornUnit? Worn,
        IReadOnlyList<UnitChoice> Units,
        IReadOnlyList<ProductChoice> Products,
        Input Start,
        Input? Draft,
        LoggedRebond? Logged
    )
    {
        public bool BondingBlocked { get; init; }

        /// <summary>What the client's operations, scans and treatments say about a bond on this day.</summary>
        public BondingPause? Pause { get; init; }

        /// <summary>Whoever logs may record that bonding may begin again.</summary>
        public bool MayAllowBonding { get; init; }

        /// <summary>Whoever logs may say that they looked and bonding is all right.</summary>
        public bool MayOverride { get; init; }

        /// <summary>Whoever logs may book the next visit, too.</summary>
        public bool MayBook { get; init; }

        public IReadOnlyList<Guid> BlockedProducts { get; init; } = [];

        /// <summary>Said when the last bond came off, and not over by the day of this visit.</summary>
        public LocalDate? NoBondUntil { get; init; }
    }

    public sealed record WornUnit(
        Guid BondId,
        Guid UnitId,
        string Serial,
        string BaseName,
        LocalDate AppliedOn,
        BondState State,
        LocalDate DueOn,
        LocalDate ClosesOn,
        Lift? Lift,
        LastGrades? Last
    );

    public sealed record UnitChoice(Guid Id, string Serial, string BaseName, UnitState State, LastGrades? Last)
    {
        /// <summary>Of the salon's stock: it is lent with the bond.</summary>
        public bool IsNobodys { get; init; }

        /// <summary>It was worn, and nobody has said that it is clean.</summary>
        public bool Unclean { get; init; }
    }

    public sealed record ProductChoice(Guid Id, string Name, ProductKind Kind, IReadOnlyList<LotChoice> Lots);

    public sealed record LotChoice(Guid Id, string Code, LocalDate? ExpiresOn, bool Usable);

    /// <summary>What someone logged for this visit already.</summary>
    public sealed record LoggedRebond(string? By, Instant At, string? Serial, LocalDate? DueOn, string? Note);

    public sealed partial record Input : TakeDownInput
    {
        public Input() => Because = RemovalReason.Scheduled;

        public Guid? UnitId { get; set; }
        public Attachment Attachment { get; set; }
        public List<ProductLine> Products { get; set; } = [];
        public bool? WaitsKept { get; set; }

        /// <summary>The salon's clock; null means the moment of saving.</summary>
        public LocalTime? FinishedAt { get; set; }

        /// <summary>An unfit unit goes on all the same: confirmed a second time.</summary>
        public bool Emergency { get; set; }

        /// <summary>Bonding is blocked, and a stylist looked and bonds all the same.</summary>
        public bool DespiteBlock { get; set; }

        /// <summary>Of a unit of the stock: the day it is due back.</summary>
        public LocalDate? DueBackOn { get; set; }

        /// <summary>The unit that goes on was still to be cleaned, and they cleaned it.</summary>
        public bool Cleaned { get; set; }

        /// <summary>The bond will have to come off again within days, and is wanted all the same.</summary>
        public bool DespiteEvent { get; set; }

        public string? Note { get; set; }
    }

    public sealed record ProductLine
    {
        public Guid ProductId { get; set; }
        public Guid? LotId { get; set; }
        public int? Coats { get; set; }

        // Two that are still empty are two lines all the same: a list of them is drawn and shortened by which, not by what.
        public bool Equals(ProductLine? other) => ReferenceEquals(this, other);

        public override int GetHashCode() => System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(this);
    }

    /// <param name="FollowUpOn">The look-over after a first fitting.</param>
    /// <param name="PlanReplacement">The unit that went on again is worn.</param>
    public sealed record Outcome(
        Guid VisitId,
        Guid ClientId,
        string ClientName,
        string Serial,
        LocalDate OpensOn,
        LocalDate DueOn,
        LocalDate ClosesOn,
        IReadOnlyList<DueReason> Why,
        LocalDate Today,
        Instant SavedAt,
        Instant CuredAt,
        int CureHours,
        LocalDate? FollowUpOn,
        bool PlanReplacement
    )
    {
        /// <summary>What the due day stands on, where the newest recalculation found no answer.</summary>
        public ModelBasis? Basis { get; init; }
    }
}
