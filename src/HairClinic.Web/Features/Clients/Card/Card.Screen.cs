namespace HairClinic.Web.Features.Clients;

public sealed partial class Card
{
    /// <param name="LeadsTo">The record this one was merged into.</param>
    public sealed record Opened(Screen? Screen, Guid? LeadsTo);

    public sealed record Screen
    {
        public required Client Client { get; init; }
        public required string HomeSalon { get; init; }

        /// <summary>Opened by the home salon or an owner, who may do more than whoever was let in.</summary>
        public bool AtHome { get; init; }

        /// <summary>Why they need no units any more, for whoever is at home; null for others, and where nobody said.</summary>
        public NeedEnd? NeedEndedBecause { get; init; }

        /// <summary>The day it is in the home salon.</summary>
        public required LocalDate Today { get; init; }

        public required Instant Now { get; init; }
        public required DateTimeZone HomeZone { get; init; }
        public required WearLineData Line { get; init; }

        /// <summary>What is on the head; null when nothing is bonded.</summary>
        public Worn? Worn { get; init; }

        /// <summary>How the last bond came off; null while one is on the head, and where none ever was.</summary>
        public TakenDown? TakenDown { get; init; }

        /// <summary>What must be asked about first; without reasons.</summary>
        public IReadOnlyList<ClearanceRow> Clearances { get; init; } = [];

        /// <summary>What the last bond was made with, whether it is still on or not.</summary>
        public Recipe? Recipe { get; init; }

        public WashVisitDay? Wash { get; init; }

        /// <summary>When the next unit must be ordered; null for who has never worn one.</summary>
        public ReorderOutlook? NextUnit { get; init; }

        public VisitRow? NextVisit { get; init; }

        /// <summary>Newest first, booked ones included.</summary>
        public required IReadOnlyList<VisitRow> Visits { get; init; }

        public required IReadOnlyList<UnitRow> Units { get; init; }
        public required IReadOnlyList<NoteRow> Notes { get; init; }

        /// <summary>Of those that open the client's own pages the ones that wait to be confirmed.</summary>
        public IReadOnlyList<OpeningAddress> Addresses { get; init; } = [];
    }

    /// <param name="CureEndsAt">Null when the moment of bonding is not known: then there is nothing to count down.</param>
    public sealed record Worn(Bond Bond, string Serial, string Kind, BondState State, Instant? CureEndsAt, int CureHours);

    /// <param name="Because">Null where it tells of their health, and whoever looks may not read that.</param>
    /// <param name="NoBondUntil">The first day on which the head may be bonded again; null where nothing was said, or that day has come.</param>
    public sealed record TakenDown(LocalDate On, RemovalReason? Because, LocalDate? NoBondUntil);

    public sealed record Recipe(Bond Bond, string Serial, string? By, IReadOnlyList<RecipeLine> Lines);

    public sealed record RecipeLine(string Product, string? Lot, int? Coats, int? LabelCureHours);

    public sealed record VisitRow(
        LocalDate Day,
        Instant StartsAt,
        Instant EndsAt,
        string Zone,
        string Salon,
        string Service,
        ServicePurpose Purpose,
        string? Person,
        VisitState State,
        string? Note,
        string? Found,
        bool FoundLifted
    )
    {
        public DateTimeZone TimeZone => DateTimeZoneProviders.Tzdb[Zone];

        /// <summary>Neither called off nor missed.</summary>
        public bool Took => State is not (VisitState.Cancelled or VisitState.DidNotCome);
    }

    /// <param name="Place">The salon that holds it.</param>
    /// <param name="Promises">Every day the workshop named, first to last.</param>
    public sealed record UnitRow(
        Guid Id,
        string Serial,
        string Kind,
        UnitState State,
        string? Place,
        UnitDates Dates,
        IReadOnlyList<LocalDate> Promises,
        int Bonds,
        string? RetiredBecause
    )
    {
        /// <summary>Where it lies, and whether it is clean.</summary>
        public string? Spot { get; init; }

        public UnitCleaning? Cleaning { get; init; }

        /// <summary>The client has it at home.</summary>
        public bool WithClient { get; init; }

        /// <summary>Of a unit of nobody's that they have now: the day it is due back.</summary>
        public LocalDate? DueBackOn { get; init; }

        /// <summary>The step that is waited for.</summary>
        public UnitStepKind? Next { get; init; }
    }

    /// <param name="Product">Null: bonding as such.</param>
    public sealed record ClearanceRow(ClearanceSeverity Kind, string? Product);

    public sealed record NoteRow(ContactOutcome Kind, Instant At, string? By, LocalDate? Until, string? Reason);

    private sealed record Bonded(Bond Bond, string? By);
}
