using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear;

namespace HairClinic.Domain.Bonding;

/// <summary>One spell of one unit glued to one head, from application to removal, with the window in which it must be renewed.</summary>
[ShapesNextOrder(nameof(RemovedOn))]
public sealed partial class Bond : PracticeOwned
{
    private readonly List<BondProduct> _products = [];

    private Bond() { }

    public Bond(Guid id, Guid hairSystemId, Guid clientId, LocalDate appliedOn, Instant? appliedAt, Attachment attachment, Guid? appliedBy)
    {
        Id = id;
        HairSystemId = hairSystemId;
        ClientId = clientId;
        AppliedOn = appliedOn;
        AppliedAt = appliedAt;
        Attachment = attachment;
        AppliedBy = appliedBy;
    }

    public Guid HairSystemId { get; private set; }
    public Guid ClientId { get; private set; }

    /// <summary>The visit that made it; null for bonds taken over from an old book.</summary>
    public Guid? VisitId { get; private set; }

    /// <summary>The civil day in the salon's zone. Stored, never derived.</summary>
    public LocalDate AppliedOn { get; private set; }

    /// <summary>The moment the last edge went down; null in old books, and then there is no cure countdown.</summary>
    public Instant? AppliedAt { get; private set; }

    public Attachment Attachment { get; private set; }
    public Guid? AppliedBy { get; private set; }

    /// <summary>Whether the drying waits between coats were kept; null where nobody wrote it down.</summary>
    public bool? WaitsKept { get; private set; }

    public IReadOnlyList<BondProduct> Products => _products;

    public LocalDate OpensOn { get; private set; }
    public LocalDate TargetOn { get; private set; }
    public LocalDate DueOn { get; private set; }
    public LocalDate ClosesOn { get; private set; }

    /// <summary>Why it falls due when it does, as data.</summary>
    public IReadOnlyList<DueReason> DueReasons { get; private set; } = [];

    /// <summary>What is due is a take-down: the bond comes off and none is made.</summary>
    public bool IsDueForTakeDown => DueReasons.AskForTakeDown();

    public Lift? Lift { get; private set; }

    /// <summary>Last day before its removal on which someone of the practice saw or heard that it was sound.</summary>
    public LocalDate? LastSoundOn { get; private set; }

    public LocalDate? RemovedOn { get; private set; }
    public RemovalReason? RemovedBecause { get; private set; }

    /// <summary>
    /// The first day on which this head may be bonded again, as it was said when the bond came off; null where nothing was
    /// said. It speaks as long as nothing else is bonded on the head.
    /// </summary>
    public LocalDate? NoBondUntil { get; private set; }

    public bool IsOpen => RemovedOn is null;

    /// <summary>The last day for which the records say whether it held.</summary>
    /// <remarks>
    /// A client whose bond lifts rings, so an open bond counts as sound until its window closes. Silence long after that does not
    /// mean that it held, and counting a few such bonds as sound would make all holds look longer.
    /// </remarks>
    public LocalDate KnownUntil => IsOpen && Lift is null ? LocalDate.Max(ClosesOn, LastSoundOn ?? AppliedOn) : LocalDate.MaxIsoValue;

    public void SetVisit(Guid visitId) => VisitId = visitId;

    /// <exception cref="Refusal">A product appears twice, or coats are out of range.</exception>
    public void SetProducts(IEnumerable<(Guid Id, AppliedProduct Use)> products, bool? waitsKept)
    {
        var used = products.Select(p => new BondProduct(p.Id, Id, p.Use)).ToList();
        if (used.DistinctBy(u => (u.ProductId, u.LotId)).Count() != used.Count)
            throw new Refusal("The same product and lot is listed twice.");
        _products.Clear();
        _products.AddRange(used);
        WaitsKept = waitsKept;
    }

    /// <summary>Takes the window the due rule worked out, with its reasons.</summary>
    public void SetDueWindow(DueWindow window)
    {
        OpensOn = window.Opens;
        TargetOn = window.Target;
        DueOn = window.DueOn;
        ClosesOn = window.Closes;
        DueReasons = [.. window.Why.Explain()];
    }

    /// <summary>An edge that came up and was put down again is no longer the first hold: nothing seen after a lift counts.</summary>
    public void MarkSeenSound(LocalDate on)
    {
        if (Lift is null && on >= AppliedOn && (LastSoundOn is null || on > LastSoundOn))
            LastSoundOn = on;
    }

    /// <summary>
    /// Only the first lift ends the hold; what follows a spot fix is not a new bond. A later report may still name
    /// the day, or about the day, that the first one left open.
    /// </summary>
    /// <exception cref="Refusal">
    /// The bond was removed, or the lift is dated before the bond, before a day on which it was seen sound, or after its report.
    /// </exception>
    public void ReportLift(Lift lift) => Lift = With(lift);

    /// <summary>How long it will have held if it comes off this way; changes nothing.</summary>
    /// <param name="found">A lift that is found when it comes off.</param>
    /// <exception cref="Refusal">It cannot come off so.</exception>
    public HoldObservation HoldIfRemoved(LocalDate on, RemovalReason because, Lift? found)
    {
        RequireOff(on, because);
        return HoldObservation.From(AppliedOn, LastSoundOn, found is null ? Lift : With(found), on, because, on);
    }

    // The first reported lift counts; a later visit may add the day if it was not known.
    private Lift? With(Lift lift)
    {
        // What came off at home is told of afterwards.
        var latest = RemovedBecause?.CameOffByItself() == true ? lift.LiftedOn ?? lift.LatestOn : lift.ReportedOn;
        if (RemovedOn is { } removed && latest > removed)
            throw new Refusal("This bond was taken off on {0}; it cannot have lifted later.", removed);
        if (lift.ReportedOn < AppliedOn || (lift.LiftedOn ?? lift.LatestOn) < AppliedOn)
            throw new Refusal("A bond cannot lift before it was made, on {0}.", AppliedOn);
        if (Lift is null && (lift.LiftedOn ?? lift.LatestOn) < LastSoundOn)
            throw new Refusal("It was seen sound on {0}. If the day is not certain, say that it is not known.", LastSoundOn);
        return Lift?.AddDay(lift, LastSoundOn ?? AppliedOn) ?? lift;
    }

    /// <exception cref="Refusal">It was removed already, or before it was made.</exception>
    public void Remove(LocalDate on, RemovalReason because)
    {
        RequireOff(on, because);
        RemovedOn = on;
        RemovedBecause = because;
    }

    /// <summary>Says from which day on the head may be bonded again.</summary>
    /// <exception cref="Refusal">It is no day after the take-down.</exception>
    internal void SetNoBondUntil(LocalDate until, LocalDate takenDownOn)
    {
        if (until <= takenDownOn)
            throw new Refusal("Until when no bond is made lies after the day of the take-down, {0}.", takenDownOn);
        NoBondUntil = until;
    }

    /// <summary>Whether a bond on that day would come before the day that was said at the take-down; it warns and stops nobody.</summary>
    public bool AsksToWaitOn(LocalDate day) => !IsOpen && day < NoBondUntil;

    private void RequireOff(LocalDate on, RemovalReason because)
    {
        if (because == RemovalReason.TakenBack)
            throw new ArgumentOutOfRangeException(nameof(because), because, "A log is taken back by its visit.");
        if (RemovedOn is not null)
            throw new Refusal("This bond was taken off on {0} already.", RemovedOn);
        if (on < AppliedOn)
            throw new Refusal("A bond cannot be taken off before it was made, on {0}.", AppliedOn);
    }

    /// <summary>It was logged by mistake: no longer a bond, but the row stays so that its products and lots can be traced.</summary>
    internal void MarkTakenBack() => (RemovedOn, RemovedBecause) = (AppliedOn, RemovalReason.TakenBack);

    /// <summary>The removal was logged by mistake: the bond is on the head as before.</summary>
    /// <exception cref="Refusal">It is on the head.</exception>
    internal void UndoRemoval()
    {
        if (RemovedOn is null)
            throw new Refusal("This bond was never taken off.");
        RemovedOn = null;
        RemovedBecause = null;
        NoBondUntil = null;
    }

    /// <summary>A lift reported on that day was logged by mistake; an earlier one stays.</summary>
    internal void ForgetLift(LocalDate reportedOn)
    {
        if (Lift?.ReportedOn == reportedOn)
            Lift = null;
    }
}

/// <summary>Where an edge came up.</summary>
public enum LiftZone
{
    Front,
    Temples,
    Sides,
    Crown,
    Nape,
    Other,
}

/// <summary>One product as it was used: which, from which lot, in how many coats.</summary>
public sealed record AppliedProduct(Guid ProductId, Guid? LotId, int? Coats);

/// <summary>Why a bond ended. Only one that came up by itself says how long it held; the others say “at least”.</summary>
public enum RemovalReason
{
    Scheduled,
    Lifted,

    /// <summary>It came off at home and was brought in.</summary>
    BroughtIn,

    /// <summary>It came off at home, and the unit with it is lost.</summary>
    LostAtHome,
    Reaction,

    /// <summary>The skin under it needs looking after, without a reaction to a product.</summary>
    Skin,

    /// <summary>An operation or a scan.</summary>
    Operation,

    /// <summary>A medical treatment.</summary>
    Treatment,

    /// <summary>The client wants to go without hair for a while.</summary>
    Rest,

    /// <summary>The client stops wearing hair, or leaves the practice.</summary>
    Leaving,

    /// <summary>Its wearer died, and nobody of the practice saw it again: how long it held is known to the last sound day.</summary>
    NotSeenAgain,
    Style,
    SalonsChoice,
    Other,

    /// <summary>It was logged by mistake and never held: the row only tells which product and lot were at whose head.</summary>
    TakenBack,
}
