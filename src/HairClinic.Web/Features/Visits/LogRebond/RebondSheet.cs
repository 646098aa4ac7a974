using HairClinic.Domain.Shelf;

namespace HairClinic.Web.Features.Visits;

/// <summary>Everything of the book that logging one rebond reads or changes, from one query.</summary>
internal sealed record RebondSheet(
    Visit Visit,
    Client Client,
    Bond? Worn,
    bool WasFitted,
    IReadOnlyList<HairSystem> Units,
    Guid BaseMaterialId,
    IReadOnlyList<Product> Products
)
{
    /// <summary>What must not be used or done on this client; nobody here knows why.</summary>
    public IReadOnlyList<Clearance> Blocks { get; init; } = [];

    /// <summary>Whether bonding itself is blocked on that day.</summary>
    /// <exception cref="Refusal">One of the products is blocked for this client: no one can wave that through.</exception>
    public bool BondingBlocked(LocalDate day)
    {
        if (Products.FirstOrDefault(p => Blocks.Any(b => b.ProductId == p.Id && b.IsValidOn(day))) is { } product)
            throw new Refusal("{0} is blocked for this client. Bond with another product.", product.Name);
        return Blocks.Any(b => b.Concerns(ServicePurpose.Rebond, day));
    }

    /// <exception cref="Refusal">It is not one of the client's.</exception>
    public HairSystem Unit(Guid? id) => Units.FirstOrDefault(u => u.Id == id) ?? throw new Refusal("Choose one of this client's units.");

    /// <exception cref="Refusal">It is not in the book.</exception>
    public Product Product(Guid id) => Products.FirstOrDefault(p => p.Id == id) ?? throw new Refusal("Choose a product for each line.");

    /// <summary>What the hold depends on: the adhesive used, else the tape.</summary>
    public Guid? AdhesiveAmong(IReadOnlyList<ProductUse> used)
    {
        return First(ProductKind.Adhesive) ?? First(ProductKind.Tape);

        Guid? First(ProductKind kind) => used.FirstOrDefault(u => Product(u.ProductId).Kind == kind)?.ProductId;
    }
}
