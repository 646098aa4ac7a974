using HairClinic.Web.Data;
using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Features.Binder;

/// <summary>Things of the book by name, as people write names: the exact one first, else the same in other capitals.</summary>
public sealed class NameIndex<T>
    where T : class
{
    private readonly Dictionary<string, T> _exact = new(StringComparer.Ordinal);
    private readonly Dictionary<string, T> _loose = new(StringComparer.OrdinalIgnoreCase);

    public NameIndex(IEnumerable<T> things, Func<T, string> nameOf)
    {
        foreach (var thing in things)
            Add(nameOf(thing), thing);
    }

    public IEnumerable<string> Names => _exact.Keys.Order(StringComparer.Ordinal);

    public T? Find(string name) => _exact.GetValueOrDefault(name) ?? _loose.GetValueOrDefault(name);

    public void Add(string name, T thing)
    {
        _exact.TryAdd(name, thing);
        _loose.TryAdd(name, thing);
    }
}

/// <summary>The people of the practice by name, those who left included: old books name them.</summary>
public sealed class StylistIndex
{
    private readonly Dictionary<Guid, Person> _people;

    private StylistIndex(List<Person> people)
    {
        _people = people.ToDictionary(p => p.Id);
        Names = new(people, p => p.Name);
    }

    public NameIndex<Person> Names { get; }

    public static async Task<StylistIndex> LoadAsync(ClinicDb db, CancellationToken cancellation) =>
        new(await db.People.AsNoTracking().OrderBy(p => p.Id).ToListAsync(cancellation));

    public string? NameOf(Guid? id) => id is { } some ? _people[some].Name : null;

    public Person NewStylist(string name, Guid salonId)
    {
        var person = new Person(Guid.CreateVersion7(), name, StaffRole.Stylist);
        person.SetSalons([(Guid.CreateVersion7(), salonId)]);
        _people.Add(person.Id, person);
        return person;
    }
}

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

    public Product CreateProduct(string name, Attachment? attachment)
    {
        var product = new Product(Guid.CreateVersion7(), name, attachment == Attachment.Tape ? ProductKind.Tape : ProductKind.Adhesive);
        _products.Add(product.Id, product);
        return product;
    }

    /// <summary>A lot under the name it is listed by.</summary>
    public sealed record NamedLot(string Name, ProductLot Lot);
}

/// <summary>The practice's services by name, with those an import has made so far.</summary>
public sealed class ServiceIndex
{
    private const int UsualMinutes = 60;
    private const int Shortest = 5;
    private const int Longest = 480;

    // What a name gives away of a service's purpose; the practice corrects it on its services page.
    private static readonly (string Word, ServicePurpose Purpose)[] Hints =
    [
        ("rebond", ServicePurpose.Rebond),
        ("fit", ServicePurpose.FirstFitting),
        ("wash", ServicePurpose.WashAndStyle),
        ("consult", ServicePurpose.Consultation),
        ("measur", ServicePurpose.Measuring),
        ("template", ServicePurpose.Measuring),
        ("lift", ServicePurpose.FixLift),
    ];

    private readonly Dictionary<Guid, ServiceKind> _services;

    private ServiceIndex(List<ServiceKind> services)
    {
        _services = services.ToDictionary(s => s.Id);
        Names = new(services, s => s.Name);
    }

    public NameIndex<ServiceKind> Names { get; }

    public static async Task<ServiceIndex> LoadAsync(ClinicDb db, CancellationToken cancellation) =>
        new(await db.ServiceKinds.AsNoTracking().Include(s => s.Steps).OrderBy(s => s.Id).ToListAsync(cancellation));

    public string NameOf(Guid id) => _services[id].Name;

    public ServiceKind CreateService(string name, int? minutes)
    {
        var plain = WordNormalizer.Normalize(name);
        var purpose = Hints
            .Where(h => plain.Contains(h.Word, StringComparison.Ordinal))
            .Select(h => (ServicePurpose?)h.Purpose)
            .FirstOrDefault();
        var service = new ServiceKind(Guid.CreateVersion7(), name, purpose ?? ServicePurpose.Other);
        service.SetSteps([(Guid.CreateVersion7(), SegmentKind.HandsOn, Math.Clamp(minutes ?? UsualMinutes, Shortest, Longest))]);
        _services.Add(service.Id, service);
        return service;
    }

    /// <summary>The service's own steps where the row lasts as long as they do, else one stretch of hands-on work.</summary>
    public static IReadOnlyList<(SegmentKind Kind, int Minutes)> StepsForMinutes(ServiceKind service, int? minutes) =>
        minutes is null || minutes == service.Minutes
            ? [.. service.Steps.OrderBy(s => s.Position).Select(s => (s.Kind, s.Minutes))]
            : [(SegmentKind.HandsOn, minutes.Value)];
}
