using HairClinic.Domain.Replacement;

namespace HairClinic.Domain.HairSystems;

/// <summary>One date a workshop promised for a unit. Every revision is kept: lateness is judged against the first.</summary>
[ShapesNextOrder]
public sealed class PromiseRevision : PracticeOwned
{
    private PromiseRevision() { }

    internal PromiseRevision(
        Guid id,
        Guid hairSystemId,
        int number,
        LocalDate promisedFor,
        LocalDate? saidOn,
        string? saidBy,
        Guid? orderPromiseId
    )
    {
        (Id, HairSystemId, Number, PromisedFor) = (id, hairSystemId, number, promisedFor);
        (SaidBy, OrderPromiseId) = (saidBy.NullIfBlank(), orderPromiseId);
        SetSaidOn(saidOn, field: "PromisedFor");
    }

    public Guid HairSystemId { get; private set; }

    /// <summary>1 for the first promise.</summary>
    public int Number { get; private set; }

    public LocalDate PromisedFor { get; private set; }
    public LocalDate? SaidOn { get; private set; }

    /// <summary>Who at the workshop said it.</summary>
    public string? SaidBy { get; private set; }

    /// <summary>The promise of the whole order that it repeats; null where it was given for this unit alone.</summary>
    public Guid? OrderPromiseId { get; private set; }

    internal void CorrectSaidOn(LocalDate on) => SetSaidOn(on, field: "On");

    private void SetSaidOn(LocalDate? on, string field) =>
        SaidOn =
            on <= PromisedFor || on is null
                ? on
                : throw new Refusal("A day that was promised on {0} cannot lie before it.", on) { Field = field };
}
