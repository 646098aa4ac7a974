using HairClinic.Domain.Practices;
using NodaTime;

namespace HairClinic.Web.Data.Accounts;

/// <summary>Somebody asked for a link to an address, known here or not. Only the address's hash is kept, for an hour.</summary>
public sealed class LinkAsk : PracticeOwned
{
    private LinkAsk() { }

    public LinkAsk(Guid id, byte[] addressHash, Instant at)
    {
        Id = id;
        AddressHash = addressHash;
        At = at;
    }

    public byte[] AddressHash { get; private set; } = [];

    public Instant At { get; private set; }
}
