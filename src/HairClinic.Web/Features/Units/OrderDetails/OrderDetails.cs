using HairClinic.Web.Data;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Units;

/// <summary>One order: what was sent, what was promised, and its units as far as whoever looks may see them.</summary>
public sealed class OrderDetails(ClinicDbFactory databases, CurrentActor current, IClock clock)
{
    /// <returns>Null: no such order.</returns>
    public async Task<Screen?> OpenAsync(Guid orderId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var found = await (
            from order in db.WorkshopOrders.AsNoTracking().Include(o => o.Promises)
            where order.Id == orderId
            join workshop in db.Workshops on order.WorkshopId equals workshop.Id
            join salon in db.Salons on order.SalonId equals salon.Id
            select new
            {
                Order = order,
                Workshop = workshop.Name,
                Salon = salon,
            }
        ).SingleOrDefaultAsync(cancellation);
        if (found is null)
            return null;
        var lines = await (
            from unit in db.HairSystems.AsNoTracking()
            where unit.OrderId == orderId
            join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
            join client in db.Clients on unit.ClientId equals client.Id into owners
            from client in owners.DefaultIfEmpty()
            orderby unit.Serial
            select new LineRow(
                unit.Id,
                unit.Serial,
                kind.Name,
                unit.State,
                unit.Cleaning,
                client == null ? null : new UnitOwner(client.Id, client.Name, client.Code),
                unit.PriceMinor,
                unit.Currency
            )
        ).ToListAsync(cancellation);
        var role = current.Person.StaffRole;
        return new Screen(found.Order, found.Workshop, found.Salon.Name, found.Salon.DayOf(clock.GetCurrentInstant()), lines)
        {
            SeesMoney = StaffPermissions.MaySeeMoney(role),
            MayWrite = StaffPermissions.MayBook(role),
        };
    }

    public sealed record Screen(WorkshopOrder Order, string Workshop, string Salon, LocalDate Today, IReadOnlyList<LineRow> Lines)
    {
        public bool SeesMoney { get; init; }
        public bool MayWrite { get; init; }

        /// <summary>Units of clients of other salons, of whom nothing more is said.</summary>
        public int Unseen => Order.UnitCount - Lines.Count;

        public bool AnyInFlight => Lines.Any(l => l.State.IsInFlight());

        /// <summary>Of the lines that are seen.</summary>
        public long? Total => Lines.All(l => l.PriceMinor is null) ? null : Lines.Sum(l => l.PriceMinor ?? 0);
    }

    public sealed record LineRow(
        Guid Id,
        string Serial,
        string Kind,
        UnitState State,
        UnitCleaning? Cleaning,
        UnitOwner? Client,
        long? PriceMinor,
        string? Currency
    )
    {
        /// <summary>The step that is waited for, to be done here.</summary>
        public UnitStepKind? Next => UnitNextSteps.Awaited(State, Cleaning, onLoan: false);
    }
}
