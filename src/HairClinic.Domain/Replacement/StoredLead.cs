namespace HairClinic.Domain.Replacement;

/// <summary>What the practice's orders of one kind of unit took, in working days of its workshop, and the lead time that follows from them.</summary>
public sealed class StoredLead : PracticeOwned
{
    /// <summary>Orders older than the newest so many say nothing about how a workshop works now.</summary>
    public const int Most = 200;

    private StoredLead() { }

    public StoredLead(Guid id, Guid unitKindId) => (Id, UnitKindId) = (id, unitKindId);

    public Guid UnitKindId { get; private set; }
    public LocalDate DataCut { get; private set; }

    /// <summary>Of orders that arrived, the newest last.</summary>
    public double[] Arrived { get; private set; } = [];

    /// <summary>How long each order in flight had waited by the cut.</summary>
    public double[] Waited { get; private set; } = [];

    /// <summary>Units of its workshop that were made again, and those that were accepted at once.</summary>
    public int Remade { get; private set; }

    public int Kept { get; private set; }

    /// <summary>The lead time as it was calculated from them; see <see cref="LeadTime.ToStoredValues"/>.</summary>
    public double[] Posterior { get; private set; } = [];

    /// <summary>Whether an order in flight was among those learnt from: one that has waited longer than all of them was left out, and asked about.</summary>
    /// <param name="waited">Working days until today.</param>
    public bool IsLearntFrom(double waited, LocalDate today) =>
        waited <= Waited.DefaultIfEmpty().Max() + Period.DaysBetween(DataCut, today);

    /// <summary>Read as it is kept; calculated where the practice's row has changed since.</summary>
    public LeadTime LeadTimeUnderPrior(LeadTimePrior prior) =>
        LeadTime.FromStoredValues(prior, Posterior) ?? LeadTime.Learn(prior, Arrived, Waited);

    public void LearnFrom(LocalDate dataCut, LeadTimePrior prior, double[] arrived, double[] waited, int remade, int kept)
    {
        DataCut = dataCut;
        Arrived = arrived.Length > Most ? arrived[^Most..] : arrived;
        Waited = waited;
        (Remade, Kept) = (remade, kept);
        Posterior = LeadTime.Learn(prior, Arrived, Waited).ToStoredValues(prior);
    }
}
