namespace HairClinic.Domain.Practices;

/// <summary>A run of days on which somebody, or a place, does not work. Both ends are included.</summary>
public abstract class ClosureOrAbsence : PracticeOwned
{
    protected ClosureOrAbsence() { }

    /// <exception cref="Refusal">It ends before it starts; <paramref name="refusal"/> says so.</exception>
    protected ClosureOrAbsence(Guid id, LocalDate from, LocalDate to, string reason, string refusal)
    {
        if (to < from)
            throw new Refusal(refusal);
        (Id, From, To, Reason) = (id, from, to, reason);
    }

    public LocalDate From { get; private set; }
    public LocalDate To { get; private set; }
    public string Reason { get; private set; } = "";

    public DateInterval Days => new(From, To);
}
