namespace HairClinic.Domain.Privacy;

/// <summary>That a client's record was erased: when, by whom, under which rule, and how many rows of which table. It names nobody but by id.</summary>
public sealed class Erasure : PracticeOwned
{
    private Erasure() { }

    /// <param name="by">The person; null for a job that keeps a rule of the practice.</param>
    public Erasure(Guid id, Guid clientId, Instant at, Guid? by, string ruleVersion, IReadOnlyDictionary<string, int> counts)
    {
        Id = id;
        ClientId = clientId;
        At = at;
        By = by;
        RuleVersion = ruleVersion;
        Counts = new(counts);
    }

    public Guid ClientId { get; private set; }
    public Instant At { get; private set; }
    public Guid? By { get; private set; }

    /// <summary>Which edition of the rule said what goes and what stays.</summary>
    public string RuleVersion { get; private set; } = "";

    /// <summary>Rows taken out or blanked, by table.</summary>
    public Dictionary<string, int> Counts { get; private set; } = [];
}
