using HairClinic.Domain.Replacement;

namespace HairClinic.Domain.HairSystems;

/// <summary>One date a workshop promised for a unit. Every revision is kept: lateness is judged against the first.</summary>
[ShapesNextOrder]
public sealed class PromiseRevision : PracticeOwned
{
    private PromiseRevision() { }

    internal PromiseRevision(Guid id, Guid hairSystemId, int number, LocalDate promisedFor, LocalDate? saidOn) =>
        (Id, HairSystemId, Number, PromisedFor, SaidOn) = (id, hairSystemId, number, promisedFor, saidOn);

    public Guid HairSystemId { get; private set; }

    /// <summary>1 for the first promise.</summary>
    public int Number { get; private set; }

    public LocalDate PromisedFor { get; private set; }
    public LocalDate? SaidOn { get; private set; }
}
