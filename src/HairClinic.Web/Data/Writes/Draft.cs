namespace HairClinic.Web.Data.Writes;

/// <summary>What a person typed into a long form and has not sent yet. One a person, form and subject.</summary>
public sealed class Draft : PracticeOwned
{
    private Draft() { }

    public Draft(Guid id, Guid personId, string form, Guid subjectId, string body, Instant at)
    {
        Id = id;
        PersonId = personId;
        Form = form;
        SubjectId = subjectId;
        SetBody(body, at);
    }

    public Guid PersonId { get; private set; }
    public string Form { get; private set; } = "";
    public Guid SubjectId { get; private set; }

    /// <summary>The form's input as JSON.</summary>
    public string Body { get; private set; } = "{}";

    public Instant SavedAt { get; private set; }

    public void SetBody(string body, Instant at)
    {
        Body = body;
        SavedAt = at;
    }
}
