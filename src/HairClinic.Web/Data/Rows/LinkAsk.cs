namespace HairClinic.Web.Data.Rows;

/// <summary>
/// Somebody asked for a link to an address, known here or not. Belongs to no practice: which one knows the address is looked up later.
/// The address itself is dropped as soon as that was done, its hash after an hour.
/// </summary>
public sealed class LinkAsk
{
    private LinkAsk() { }

    public LinkAsk(Guid id, byte[] addressHash, string address, Instant at) =>
        (Id, AddressHash, Address, At) = (id, addressHash, address, at);

    public Guid Id { get; private set; }
    public byte[] AddressHash { get; private set; } = [];

    /// <summary>Null once it was looked up.</summary>
    public string? Address { get; private set; }

    public Instant At { get; private set; }
}
