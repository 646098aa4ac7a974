using HairClinic.Domain.Bonding;
using HairClinic.Domain.Shelf;

namespace HairClinic.Web.Features.Binder;

/// <summary>What held the unit, out of everything used for a bond: the sheet has room for one.</summary>
public sealed record UsedAdhesive(string Product, string? Lot, int? Coats)
{
    public static UsedAdhesive? Of(Bond bond, IReadOnlyDictionary<Guid, Product> products)
    {
        var held = bond
            .Products.Where(p => products[p.ProductId].Kind is ProductKind.Adhesive or ProductKind.Tape)
            .Concat(bond.Products)
            .FirstOrDefault();
        if (held is null)
            return null;
        var product = products[held.ProductId];
        return new UsedAdhesive(product.Name, product.Lots.FirstOrDefault(l => l.Id == held.LotId)?.Code, held.Coats);
    }
}
