namespace HairClinic.Domain.LoadAhead;

/// <summary>What a page shows of the whole book, calculated each night and kept until the next: ids and numbers, no names of people.</summary>
public sealed class StoredPageResult : PracticeOwned
{
    private StoredPageResult() { }

    /// <param name="salons">Those of whoever reads it, in order; none for an owner, who sees all there is.</param>
    public StoredPageResult(Guid id, Guid[] salons, string question, string answer) =>
        (Id, Salons, Question, Answer) = (id, salons, question, answer);

    public Guid[] Salons { get; private set; } = [];
    public string Question { get; private set; } = "";

    /// <summary>As JSON. Whoever changes what is kept gives the question another name.</summary>
    public string Answer { get; private set; } = "";
}
