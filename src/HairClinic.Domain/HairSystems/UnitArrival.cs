namespace HairClinic.Domain.HairSystems;

/// <summary>One arrival of a unit from its workshop: in what condition it came, until when a claim is taken, and what was decided.</summary>
public sealed class UnitArrival : PracticeOwned
{
    private UnitArrival() { }

    internal UnitArrival(Guid id, Guid hairSystemId, int number, LocalDate arrivedOn, bool damaged, string? condition, int? claimDays)
    {
        (Id, HairSystemId, Number, ArrivedOn, Damaged) = (id, hairSystemId, number, arrivedOn, damaged);
        Condition = condition.NullIfBlank();
        ClaimUntil = claimDays is { } days ? arrivedOn.PlusDays(days) : null;
    }

    public Guid HairSystemId { get; private set; }

    /// <summary>1 for the first; one more after each remake.</summary>
    public int Number { get; private set; }

    public LocalDate ArrivedOn { get; private set; }

    /// <summary>The parcel or the unit was damaged when it came.</summary>
    public bool Damaged { get; private set; }

    public string? Condition { get; private set; }

    /// <summary>The last day on which the workshop takes a claim; null where no workshop is known.</summary>
    public LocalDate? ClaimUntil { get; private set; }

    public LocalDate? InspectedOn { get; private set; }

    /// <summary>Null until somebody looked.</summary>
    public bool? KindAsOrdered { get; private set; }

    public bool? BaseAsOrdered { get; private set; }
    public bool? PriceAsOrdered { get; private set; }

    /// <summary>It was cut, washed or worn before it was inspected: workshops then refuse a claim. Common practice, no source.</summary>
    public bool Altered { get; private set; }

    public ArrivalDecision? Decision { get; private set; }
    public string? Note { get; private set; }

    /// <summary>Who pays for making it again; null where it is not made again.</summary>
    public RemakePayer? RemakePaidBy { get; private set; }

    /// <summary>Days left for a claim on a day; below 0 once it is over.</summary>
    public int? ClaimDaysLeft(LocalDate today) => ClaimUntil is { } last ? Period.DaysBetween(today, last) : null;

    /// <summary>The time for a claim moves with it.</summary>
    internal void CorrectArrivedOn(LocalDate on) => (ClaimUntil, ArrivedOn) = (ClaimUntil?.PlusDays(Period.DaysBetween(ArrivedOn, on)), on);

    internal void CorrectInspectedOn(LocalDate on) => InspectedOn = on;

    internal void Inspect(LocalDate on, ArrivalFindings found)
    {
        InspectedOn = on;
        (KindAsOrdered, BaseAsOrdered, PriceAsOrdered) = (found.KindAsOrdered, found.BaseAsOrdered, found.PriceAsOrdered);
        Altered = found.Altered;
        (Decision, Note, RemakePaidBy) = (found.Decision, found.Note.NullIfBlank(), found.RemakePaidBy);
    }

    internal void ForgetInspection()
    {
        (InspectedOn, KindAsOrdered, BaseAsOrdered, PriceAsOrdered, Altered) = (null, null, null, null, false);
        (Decision, Note, RemakePaidBy) = (null, null, null);
    }
}

/// <summary>What an arrival was held against, and what was decided.</summary>
/// <exception cref="Refusal">A decision that does not follow from what was seen.</exception>
public sealed record ArrivalFindings
{
    public ArrivalFindings(
        bool kindAsOrdered,
        bool baseAsOrdered,
        bool priceAsOrdered,
        bool altered,
        ArrivalDecision decision,
        string? note,
        RemakePayer? remakePaidBy
    )
    {
        var asOrdered = kindAsOrdered && baseAsOrdered && priceAsOrdered;
        if (decision == ArrivalDecision.Accepted && !asOrdered)
            throw new Refusal("Something is not as ordered: accept it with a note, or send it back.") { Field = "Decision" };
        if (decision != ArrivalDecision.Accepted && string.IsNullOrWhiteSpace(note))
            throw new Refusal("Write what is wrong with it.") { Field = "Note" };
        if (decision == ArrivalDecision.Remake && remakePaidBy is null)
            throw new Refusal("Say who pays for making it again.") { Field = "RemakePaidBy" };
        (KindAsOrdered, BaseAsOrdered, PriceAsOrdered, Altered) = (kindAsOrdered, baseAsOrdered, priceAsOrdered, altered);
        (Decision, Note, RemakePaidBy) = (decision, note, decision == ArrivalDecision.Remake ? remakePaidBy : null);
    }

    public static readonly ArrivalFindings AsOrdered = new(true, true, true, altered: false, ArrivalDecision.Accepted, null, null);

    public bool KindAsOrdered { get; }
    public bool BaseAsOrdered { get; }
    public bool PriceAsOrdered { get; }
    public bool Altered { get; }
    public ArrivalDecision Decision { get; }
    public string? Note { get; }
    public RemakePayer? RemakePaidBy { get; }
}

public enum ArrivalDecision
{
    Accepted,
    AcceptedWithNote,

    /// <summary>It goes back and is made again.</summary>
    Remake,

    /// <summary>It goes back, and the money with it.</summary>
    Refused,
}

public enum RemakePayer
{
    Workshop,
    Practice,
    Client,
}
