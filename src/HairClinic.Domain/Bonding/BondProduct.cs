namespace HairClinic.Domain.Bonding;

/// <summary>A product used for a bond, with its lot, so that a reaction or a bad lot can be traced.</summary>
public sealed class BondProduct : PracticeOwned
{
    private BondProduct() { }

    internal BondProduct(Guid id, Guid bondId, AppliedProduct use)
    {
        if (use.Coats is < 1 or > 12)
            throw new Refusal("Coats lie between 1 and 12.");
        Id = id;
        BondId = bondId;
        ProductId = use.ProductId;
        LotId = use.LotId;
        Coats = use.Coats;
    }

    public Guid BondId { get; private set; }
    public Guid ProductId { get; private set; }
    public Guid? LotId { get; private set; }
    public int? Coats { get; private set; }
}
