namespace HairClinic.Web.Data.Writes;

/// <summary>A draft of a form about a client's health: sealed with the client's key. One a person, form and client.</summary>
public sealed class SealedDraft : PracticeOwned
{
    private SealedDraft() { }

    public SealedDraft(Guid id, Guid personId, string form, Guid clientId, byte[] closed, Instant at) =>
        (Id, PersonId, Form, ClientId, Closed, SavedAt) = (id, personId, form, clientId, closed, at);

    public Guid PersonId { get; private set; }
    public string Form { get; private set; } = "";
    public Guid ClientId { get; private set; }
    public byte[] Closed { get; private set; } = [];
    public Instant SavedAt { get; private set; }
}
