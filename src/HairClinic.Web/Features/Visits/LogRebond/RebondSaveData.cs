using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;

namespace HairClinic.Web.Features.Visits;

/// <summary>Everything of the book that logging one rebond reads or changes, from one query.</summary>
internal sealed record RebondSaveData(
    Visit Visit,
    Client Client,
    Bond? Worn,
    bool WasFitted,
    IReadOnlyList<HairSystem> Units,
    Guid BaseMaterialId,
    IReadOnlyList<Product> Products
)
{
    /// <summary>Of a unit of nobody's that is on the head: its loan.</summary>
    public UnitLoan? WornLoan { get; init; }

    /// <summary>What must not be used or done on this client; nobody here knows why.</summary>
    public IReadOnlyList<Clearance> Blocks { get; init; } = [];

    private IReadOnlyList<WrittenGrades> Written { get; init; } = [];

    /// <param name="salons">Those of whoever logs.</param>
    /// <exception cref="Refusal">There is no such visit in them.</exception>
    public static async Task<RebondSaveData> LoadAsync(
        ClinicDb db,
        LogRebond.Input input,
        IReadOnlyCollection<Guid> salons,
        CancellationToken cancellation
    )
    {
        var products = input.Products.Select(p => p.ProductId).ToList();
        // Lots, events and the record come along so that the context ties them to their owners.
        var found = await db
            .Visits.Where(v => v.Id == input.VisitId && salons.Contains(v.SalonId))
            .Select(v => new
            {
                Visit = v,
                v.Record,
                Client = db.Clients.First(c => c.Id == v.ClientId),
                Events = db.LifeEvents.Where(e => e.ClientId == v.ClientId).ToList(),
                Worn = db.Bonds.FirstOrDefault(b => b.ClientId == v.ClientId && b.RemovedOn == null),
                WasFitted = db.Bonds.Any(b => b.ClientId == v.ClientId),
                // Theirs, what is on the head, and what is chosen from the stock.
                Units = db
                    .HairSystems.Where(u =>
                        u.ClientId == v.ClientId
                        || u.ClientId == null && u.Id == input.UnitId
                        || db.Bonds.Any(b => b.HairSystemId == u.Id && b.ClientId == v.ClientId && b.RemovedOn == null)
                    )
                    .ToList(),
                Loans = db.UnitLoans.Where(l => l.ClientId == v.ClientId && l.BackOn == null).ToList(),
                BaseMaterialId = (
                    from unit in db.HairSystems
                    join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
                    where unit.Id == input.UnitId
                    select kind.BaseMaterialId
                ).FirstOrDefault(),
                Products = db.Products.Where(p => products.Contains(p.Id)).ToList(),
                Lots = db.ProductLots.Where(l => products.Contains(l.ProductId)).ToList(),
                // Of the unit on the head, what its take-downs found.
                Written = (
                    from bond in db.Bonds
                    where bond.ClientId == v.ClientId && bond.RemovedOn == null
                    join record in db.VisitRecords on bond.HairSystemId equals record.RemovedUnitId
                    select new WrittenGrades(
                        record.Grades.Shedding,
                        record.Grades.Knots,
                        record.Grades.Base,
                        record.Grades.Fit,
                        record.Grades.Hair,
                        record.Grades.Colour,
                        record.RecordedAt
                    )
                ).ToList(),
                Clearances = db.Clearances.Where(c => c.ClientId == v.ClientId && c.Kind == ClearanceSeverity.Block).ToList(),
            })
            .SingleOrDefaultAsync(cancellation);
        if (found is null)
            throw new Refusal("This visit is not in the book of your salons.");
        return new(found.Visit, found.Client, found.Worn, found.WasFitted, found.Units, found.BaseMaterialId, found.Products)
        {
            Blocks = found.Clearances,
            Written = found.Written,
            WornLoan = found.Loans.Find(l => l.HairSystemId == found.Worn?.HairSystemId),
        };
    }

    /// <summary>What was written of the unit on the head before; null where nothing was.</summary>
    public InspectionGrades? GradesBefore(Salon salon) => LastGrades.From(Written, salon.TimeZone)?.Grades;

    /// <summary>Whether bonding itself is blocked on that day.</summary>
    /// <exception cref="Refusal">One of the products is blocked for this client: no one can wave that through.</exception>
    public bool BondingBlocked(LocalDate day)
    {
        if (Products.FirstOrDefault(p => Blocks.Any(b => b.ProductId == p.Id && b.IsValidOn(day))) is { } product)
            throw new Refusal("{0} is blocked for this client. Bond with another product.", product.Name);
        return Blocks.Any(b => b.ConcernsServiceOn(ServicePurpose.Rebond, day));
    }

    /// <exception cref="Refusal">It is not one of the client's.</exception>
    public HairSystem UnitById(Guid? id) =>
        Units.FirstOrDefault(u => u.Id == id) ?? throw new Refusal("Choose one of this client's units, or one of the stock.");

    /// <exception cref="Refusal">It is not in the book.</exception>
    public Product ProductById(Guid id) => Products.FirstOrDefault(p => p.Id == id) ?? throw new Refusal("Choose a product for each line.");

    /// <summary>What the hold depends on: the adhesive used, else the tape.</summary>
    public Guid? AdhesiveAmong(IReadOnlyList<AppliedProduct> used)
    {
        return First(ProductKind.Adhesive) ?? First(ProductKind.Tape);

        Guid? First(ProductKind kind) => used.FirstOrDefault(u => ProductById(u.ProductId).Kind == kind)?.ProductId;
    }
}
