namespace HairClinic.Domain.Clients;

/// <summary>Two records of one person made one, with enough kept to undo it.</summary>
public sealed class ClientMerge : PracticeOwned
{
    private ClientMerge() { }

    public ClientMerge(Guid id, Guid keptId, Guid foldedId, Instant at, Guid by) =>
        (Id, KeptId, FoldedId, MergedAt, MergedBy) = (id, keptId, foldedId, at, by);

    public Guid KeptId { get; private set; }
    public Guid FoldedId { get; private set; }
    public Instant MergedAt { get; private set; }
    public Guid MergedBy { get; private set; }

    /// <summary>Ids of the rows that moved, by table, so that undo moves back exactly those.</summary>
    public Dictionary<string, List<Guid>> Moved { get; private set; } = [];

    public Instant? UndoneAt { get; private set; }

    /// <returns>How many there are.</returns>
    public int RecordMovedRows(string table, IEnumerable<Guid> ids) => (Moved[table] = [.. ids]).Count;

    /// <exception cref="Refusal">Undone already.</exception>
    public void Undo(Instant now) => UndoneAt = UndoneAt is null ? now : throw new Refusal("This merge was undone already.");
}
