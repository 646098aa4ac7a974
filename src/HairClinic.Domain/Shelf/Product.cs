using HairClinic.Domain.Practices;
using NodaTime;

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
        Chemistry = string.IsNullOrWhiteSpace(chemistry) ? null : chemistry.Trim();
        LabelCureHours = labelCureHours;
    }

    public ProductLot Receive(Guid lotId, string code, LocalDate? expiresOn)
    {
        var lot = new ProductLot(lotId, Id, code, expiresOn);
        _lots.Add(lot);
        return lot;
    }

    public void Retire() => Retired = true;
}
