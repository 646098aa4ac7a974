using HairClinic.Domain.Practices;
using NodaTime;

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

    public bool Retired { get; private set; }

    public IReadOnlyList<WorkshopClosure> Closures => _closures;

    public void Rename(string name) => Name = name.Trim();

    /// <exception cref="Refusal">The closure ends before it starts.</exception>
    public void Close(Guid closureId, LocalDate from, LocalDate to, string reason) =>
        _closures.Add(new WorkshopClosure(closureId, Id, from, to, reason));

    public void Reopen(Guid closureId) => _closures.RemoveAll(c => c.Id == closureId);

    public void Retire() => Retired = true;
}
