namespace HairClinic.Web.Data.Rows;

/// <summary>One person's PIN at one tablet. It opens nothing by itself: only while their full sign-in there is younger than twelve hours.</summary>
public sealed class TabletPin : PracticeOwned
{
    /// <summary>Wrong tries after which it opens nothing until a full sign-in. Six digits and five tries: one in 200,000.</summary>
    public const int Tries = 5;

    private TabletPin() { }

    public TabletPin(Guid id, Guid tabletId, Guid personId) => (Id, TabletId, PersonId) = (id, tabletId, personId);

    public Guid TabletId { get; private set; }
    public Guid PersonId { get; private set; }

    /// <summary>A salted slow hash, of the PIN mixed with a key that lies outside the database.</summary>
    public string Hash { get; private set; } = "";

    public string MasterKeyId { get; private set; } = "";

    /// <summary>A digest of the account's security stamp: whatever changes the sign-in changes the stamp, and so undoes the PIN.</summary>
    public string Stamp { get; private set; } = "";

    /// <summary>Counted by the database alone, so that tries at the same moment are all counted.</summary>
    public int WrongTries { get; private set; }

    public Instant SetAt { get; private set; }

    public void SetPin(string hash, string masterKeyId, string stamp, Instant now) =>
        (Hash, MasterKeyId, Stamp, WrongTries, SetAt) = (hash, masterKeyId, stamp, 0, now);
}
