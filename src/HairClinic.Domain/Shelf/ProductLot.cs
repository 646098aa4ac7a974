namespace HairClinic.Domain.Shelf;

/// <summary>One lot of a product, so that a bad one can be traced to every head it touched.</summary>
public sealed class ProductLot : PracticeOwned
{
    private ProductLot() { }

    internal ProductLot(Guid id, Guid productId, string code, LocalDate? expiresOn)
    {
        Id = id;
        ProductId = productId;
        Code = code.Trim();
        ExpiresOn = expiresOn;
    }

    public Guid ProductId { get; private set; }
    public string Code { get; private set; } = "";

    /// <summary>Last day on which it may be used.</summary>
    public LocalDate? ExpiresOn { get; private set; }

    /// <summary>Used up or thrown away; no longer offered.</summary>
    public bool Finished { get; private set; }

    public bool IsUsableOn(LocalDate day) => !Finished && !(ExpiresOn < day);

    public void Edit(string code, LocalDate? expiresOn)
    {
        Code = code.Trim();
        ExpiresOn = expiresOn;
    }

    public void Finish() => Finished = true;
}
