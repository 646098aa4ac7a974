using HairClinic.Domain.Bonding;

namespace HairClinic.Domain.Shelf;

/// <summary>Something that touches skin, base or hair. Its label comes before any default here.</summary>
public sealed class Product : PracticeOwned
{
    private readonly List<ProductLot> _lots = [];

    private Product() { }

    public Product(Guid id, string name, ProductKind kind)
    {
        Id = id;
        Edit(name, kind, chemistry: null, labelCureHours: null);
    }

    public string Name { get; private set; } = "";
    public ProductKind Kind { get; private set; }

    /// <summary>Such as “water-based acrylic”; in the practice's words.</summary>
    public string? Chemistry { get; private set; }

    /// <summary>Hours of cure the label asks for, where it asks for more than the practice does.</summary>
    public int? LabelCureHours { get; private set; }

    public bool Retired { get; private set; }

    public IReadOnlyList<ProductLot> Lots => _lots;

    public void Edit(string name, ProductKind kind, string? chemistry, int? labelCureHours)
    {
        Name = name.Trim();
        Kind = kind;
        Chemistry = chemistry.NullIfBlank();
        LabelCureHours = labelCureHours;
    }

    public ProductLot ReceiveLot(Guid lotId, string code, LocalDate? expiresOn)
    {
        var lot = new ProductLot(lotId, Id, code, expiresOn);
        _lots.Add(lot);
        return lot;
    }

    /// <summary>This product as a bond was taken down with it: what was used is written down, also from a lot that had expired.</summary>
    /// <exception cref="Refusal">The lot is another product's.</exception>
    public AppliedProduct CreateTakeDownUse(Guid? lotId) =>
        lotId is null || _lots.Exists(l => l.Id == lotId)
            ? new AppliedProduct(Id, lotId, Coats: null)
            : throw new Refusal("That lot is not one of {0}.", Name);

    public void Retire() => Retired = true;

    /// <summary>This product as used on a day, from a lot that may be used then.</summary>
    /// <param name="coats">How many coats; null where coats are not counted.</param>
    /// <exception cref="Refusal">
    /// The lot is another product's, used up or expired; or an adhesive of which lots are open is used without naming one.
    /// </exception>
    public AppliedProduct CreateAppliedProduct(LocalDate day, Guid? lotId, int? coats)
    {
        if (lotId is null && Kind == ProductKind.Adhesive && _lots.Any(l => l.IsUsableOn(day)))
            throw new Refusal("Choose the lot of {0}, so that a bad one can be traced to every head it touched.", Name);
        if (lotId is not { } id)
            return new AppliedProduct(Id, null, coats);
        var lot = _lots.Find(l => l.Id == id) ?? throw new Refusal("That lot is not one of {0}.", Name);
        if (lot.Finished)
            throw new Refusal("Lot {0} of {1} is marked as used up. Choose another.", lot.Code, Name);
        if (!lot.IsUsableOn(day))
            throw new Refusal("Lot {0} of {1} expired on {2}. Do not bond with it; choose another.", lot.Code, Name, lot.ExpiresOn!);
        return new AppliedProduct(Id, id, coats);
    }
}

public enum ProductKind
{
    Adhesive,
    Tape,
    Protector,
    Remover,
    Solvent,
    Cleaner,
    Other,
}
