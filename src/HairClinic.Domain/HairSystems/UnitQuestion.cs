namespace HairClinic.Domain.HairSystems;

/// <summary>Something the workshop asks about a unit before it goes on with it.</summary>
public sealed class UnitQuestion : PracticeOwned
{
    private UnitQuestion() { }

    public UnitQuestion(Guid id, Guid hairSystemId, LocalDate askedOn, string question)
    {
        (Id, HairSystemId, AskedOn) = (id, hairSystemId, askedOn);
        Question = question.Trim();
    }

    public Guid HairSystemId { get; private set; }
    public LocalDate AskedOn { get; private set; }
    public string Question { get; private set; } = "";
    public LocalDate? AnsweredOn { get; private set; }
    public string? Answer { get; private set; }

    /// <exception cref="Refusal">It was answered already, or before it was asked.</exception>
    public void SetAnswer(LocalDate on, string answer)
    {
        if (AnsweredOn is { } day)
            throw new Refusal("This was answered on {0}.", day);
        if (on < AskedOn)
            throw new Refusal("It was asked on {0}, so it cannot be answered before.", AskedOn) { Field = "On" };
        (AnsweredOn, Answer) = (on, answer.Trim());
    }
}
