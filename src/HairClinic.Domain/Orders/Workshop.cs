namespace HairClinic.Domain.Orders;

/// <summary>Where units are made. Its closures are added to arrival dates, never learnt as lead time.</summary>
public sealed class Workshop : PracticeOwned
{
    private readonly List<WorkshopClosure> _closures = [];

    private Workshop() { }

    public Workshop(Guid id, string name)
    {
        Id = id;
        Rename(name);
    }

    public string Name { get; private set; } = "";

    /// <summary>Of twenty orders so many are expected to be made again; the practice's row, common practice until its own orders say better.</summary>
    public int RemadeOfTwenty { get; private set; } = 1;

    /// <summary>Days from arrival until a unit that must be made again is on its way back.</summary>
    public int InspectionDays { get; private set; } = 7;

    /// <summary>Days from arrival within which it takes a claim: seven or ten are common, no source; its own terms come first.</summary>
    public int ClaimDays { get; private set; } = 7;

    public bool Retired { get; private set; }

    public IReadOnlyList<WorkshopClosure> Closures => _closures;

    public void Rename(string name) => Name = name.Trim();

    /// <exception cref="Refusal">The closure ends before it starts.</exception>
    public void AddClosure(Guid closureId, LocalDate from, LocalDate to, string reason) =>
        _closures.Add(new WorkshopClosure(closureId, Id, from, to, reason));

    public void RemoveClosure(Guid closureId) => _closures.RemoveAll(c => c.Id == closureId);

    /// <exception cref="Refusal">More than half would be made again, or the inspection takes over 60 days.</exception>
    public void SetRemakesAndInspection(int remadeOfTwenty, int inspectionDays)
    {
        if (remadeOfTwenty is < 0 or > 10)
            throw new Refusal("Of twenty orders 0 to 10 are made again.");
        if (inspectionDays is < 0 or > 60)
            throw new Refusal("A unit is inspected and sent back within 0 to 60 days.");
        (RemadeOfTwenty, InspectionDays) = (remadeOfTwenty, inspectionDays);
    }

    /// <exception cref="Refusal">More than 90 days.</exception>
    public void SetClaimDays(int days) =>
        ClaimDays = days is >= 0 and <= 90 ? days : throw new Refusal("A workshop takes claims for 0 to 90 days.");

    public void Retire() => Retired = true;
}

/// <summary>Days on which a workshop makes nothing.</summary>
public sealed class WorkshopClosure : ClosureOrAbsence
{
    private WorkshopClosure() { }

    internal WorkshopClosure(Guid id, Guid workshopId, LocalDate from, LocalDate to, string reason)
        : base(id, from, to, reason, "The closure ends before it starts.") => WorkshopId = workshopId;

    public Guid WorkshopId { get; private set; }
}
