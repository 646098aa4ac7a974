using HairClinic.Domain.Replacement;

namespace HairClinic.Domain.HairSystems;

/// <summary>A unit of nobody's that a client has for a time: bonded at the chair, or given out unglued.</summary>
[ShapesNextOrder]
public sealed class UnitLoan : PracticeOwned
{
    private UnitLoan() { }

    /// <exception cref="Refusal">It is due back before it goes out.</exception>
    public UnitLoan(Guid id, Guid hairSystemId, Guid clientId, LocalDate lentOn, LocalDate dueBackOn)
    {
        (Id, HairSystemId, ClientId, LentOn) = (id, hairSystemId, clientId, lentOn);
        Prolong(dueBackOn);
    }

    public Guid HairSystemId { get; private set; }

    public Guid ClientId { get; private set; }
    public LocalDate LentOn { get; private set; }
    public LocalDate DueBackOn { get; private set; }

    /// <summary>Null while they have it.</summary>
    public LocalDate? BackOn { get; private set; }

    public bool IsOpen => BackOn is null;

    /// <exception cref="Refusal">It is due back before it went out.</exception>
    public void Prolong(LocalDate dueBackOn) =>
        DueBackOn =
            dueBackOn > LentOn
                ? dueBackOn
                : throw new Refusal("A unit that is lent on {0} is due back on a later day.", LentOn) { Field = "DueBackOn" };

    /// <exception cref="Refusal">It is back already, or the day lies before it was lent.</exception>
    public void BringBack(LocalDate on)
    {
        if (BackOn is { } back)
            throw new Refusal("It came back on {0}.", back);
        if (on < LentOn)
            throw new Refusal("It was lent on {0}, so it cannot be back before.", LentOn) { Field = "On" };
        BackOn = on;
    }

    /// <exception cref="Refusal">It is due back before.</exception>
    internal void CorrectLentOn(LocalDate on) =>
        LentOn = on < DueBackOn ? on : throw new Refusal("A unit that is lent on {0} is due back on a later day.", on) { Field = "On" };

    internal void CorrectBackOn(LocalDate on) => BackOn = on;

    internal void UndoBringBack() => BackOn = null;

    /// <summary>As it was at the end of an earlier day; null where it was not lent yet. The day it was due back is the last that was agreed.</summary>
    public UnitLoan? AsOf(LocalDate day) =>
        LentOn > day ? null : new UnitLoan(Id, HairSystemId, ClientId, LentOn, DueBackOn) { BackOn = BackOn <= day ? BackOn : null };

    /// <summary>Days it may still be worn, as far as was agreed; 0 once it is due back.</summary>
    public int DaysLeft(LocalDate today) => IsOpen ? Math.Max(0, Period.DaysBetween(today, DueBackOn)) : 0;
}
