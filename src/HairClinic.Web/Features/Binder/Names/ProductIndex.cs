using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Binder;

/// <summary>Products with their lots by name, with those an import has made so far.</summary>
public sealed class ProductIndex
{
    private readonly Dictionary<Guid, Product> _products;

    private ProductIndex(List<Product> products)
    {
        _products = products.ToDictionary(p => p.Id);
        Names = new(products, p => p.Name);
        Lots = new(
            products
                .SelectMany(p => p.Lots.Select(l => (Product: p, Lot: l)))
                .Select(x => new NamedLot($"{x.Product.Name}: {x.Lot.Code}", x.Lot)),
            l => l.Name
        );
    }

    public NameIndex<Product> Names { get; }

    public NameIndex<NamedLot> Lots { get; }

    public IReadOnlyDictionary<Guid, Product> All => _products;

    public static async Task<ProductIndex> LoadAsync(ClinicDb db, CancellationToken cancellation) =>
        new(await db.Products.Include(p => p.Lots).OrderBy(p => p.Id).ToListAsync(cancellation));

    public Product Make(string name, Attachment? attachment)
    {
        var product = new Product(Guid.CreateVersion7(), name, attachment == Attachment.Tape ? ProductKind.Tape : ProductKind.Adhesive);
        _products.Add(product.Id, product);
        return product;
    }

    /// <summary>A lot under the name it is listed by.</summary>
    public sealed record NamedLot(string Name, ProductLot Lot);
}
