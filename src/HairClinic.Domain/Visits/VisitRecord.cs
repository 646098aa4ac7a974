using HairClinic.Domain.Bonding;
using HairClinic.Domain.Wear;

namespace HairClinic.Domain.Visits;

/// <summary>What was seen and done at a visit: one record per visit, written by the stylist.</summary>
public sealed class VisitRecord : PracticeOwned
{
    private readonly List<TakeDownProduct> _takeDownProducts = [];

    private VisitRecord() { }

    internal VisitRecord(Guid id, Guid visitId, Guid? removedUnitId, TakeDown? takeDown, Instant at, Guid? by, string? note)
    {
        Id = id;
        VisitId = visitId;
        RemovedUnitId = removedUnitId;
        Grades = takeDown?.SeenGrades.EnsureValid() ?? InspectionGrades.NotLookedAt;
        LiftedOn = takeDown?.LiftedOn;
        LiftZone = takeDown?.LiftZone;
        FoundLifted = takeDown?.HadLifted ?? false;
        LiftedSince = LiftedOn is null ? takeDown?.LiftedSince : null;
        if (Grades.AnyGiven)
            GradesCopied = takeDown?.GradesCopied;
        if (Grades.IsAtLeast(InspectionGrades.PlanReplacement) == true)
            (WornOutOn, WornOutSince) = (takeDown?.WornOutOn, takeDown?.WornOutOn is null ? takeDown?.WornOutSince : null);
        RecordedAt = at;
        RecordedBy = by;
        Note = note.NullIfBlank();
    }

    internal VisitRecord(Guid id, Guid visitId, EdgeFindings? seen, Instant at, Guid? by, string? note)
        : this(id, visitId, removedUnitId: null, takeDown: null, at, by, note)
    {
        FoundLifted = seen?.Up ?? false;
        LiftedOn = seen?.LiftedOn;
        LiftedSince = LiftedOn is null ? seen?.Since : null;
        LiftZone = seen?.Zone;
    }

    public Guid VisitId { get; private set; }

    /// <summary>The unit that was taken down and inspected.</summary>
    public Guid? RemovedUnitId { get; private set; }

    public InspectionGrades Grades { get; private set; } = InspectionGrades.NotLookedAt;

    /// <summary>
    /// True: filled in as they were last time, and none was changed. False: a look of its own. Null where nothing was graded, and in
    /// records of before it was asked.
    /// </summary>
    public bool? GradesCopied { get; private set; }

    /// <summary>Where it was found worn out: the first day on which it looked so, if somebody knew it.</summary>
    public LocalDate? WornOutOn { get; private set; }

    /// <summary>And if not, about when, as it was said on the day of the visit.</summary>
    public SinceWhen? WornOutSince { get; private set; }

    /// <summary>Whether the edge was up, or the unit off, when the client came.</summary>
    public bool FoundLifted { get; private set; }

    /// <summary>The day the client noticed, where they know it.</summary>
    public LocalDate? LiftedOn { get; private set; }

    /// <summary>Where they do not: about when, as they said at the visit.</summary>
    public SinceWhen? LiftedSince { get; private set; }

    public LiftZone? LiftZone { get; private set; }

    /// <summary>Whether the drying waits of the new bond were kept.</summary>
    public bool? WaitsKept { get; private set; }

    public Instant RecordedAt { get; private set; }
    public Guid? RecordedBy { get; private set; }
    public string? Note { get; private set; }

    /// <summary>What the bond was taken down with.</summary>
    public IReadOnlyList<TakeDownProduct> TakeDownProducts => _takeDownProducts;

    /// <exception cref="Refusal">A product and lot is listed twice.</exception>
    internal void SetTakeDownProducts(IReadOnlyList<(Guid Id, AppliedProduct Use)> products)
    {
        if (products.DistinctBy(p => (p.Use.ProductId, p.Use.LotId)).Count() != products.Count)
            throw new Refusal("The same product and lot is listed twice.");
        _takeDownProducts.AddRange(products.Select(p => new TakeDownProduct(p.Id, Id, p.Use.ProductId, p.Use.LotId)));
    }

    internal void SetDryingWaitsKept(bool? kept) => WaitsKept = kept;
}
