using HairClinic.Web.Data;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Units;

/// <summary>Units by where they are: what is to be cleaned, what dries, what is ready, what is lent or away, and for how long.</summary>
public sealed class Shelf(ClinicDbFactory databases, CurrentActor current, IClock clock)
{
    /// <summary>Beyond these of one group the list is cut; the search finds the rest.</summary>
    public const int MostOfAGroup = 200;

    private static readonly UnitState[] Held =
    [
        UnitState.Arrived,
        UnitState.Inspected,
        UnitState.Accepted,
        UnitState.Prepared,
        UnitState.Resting,
        UnitState.EmergencySpare,
        UnitState.Away,
    ];

    /// <param name="salonId">Null for the salon one works at.</param>
    public async Task<Screen> OpenAsync(Guid? salonId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var person = current.Person;
        var salons = await UnitSalon.ChoicesAsync(db, person, cancellation);
        var at = salonId is { } asked && person.Salons.Contains(asked) ? asked : person.AtSalon ?? UnitSalon.Prefer(salons, null);
        var salon = await UnitSalon.LoadAsync(db, at, null, person, cancellation);
        var today = salon.DayOf(clock.GetCurrentInstant());
        var rows = await (
            from unit in db.HairSystems.AsNoTracking()
            where Held.Contains(unit.State)
            join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
            join client in db.Clients on unit.ClientId equals client.Id into owners
            from client in owners.DefaultIfEmpty()
            where unit.PlaceSalonId == salon.Id || unit.PlaceSalonId == null && client != null && client.HomeSalonId == salon.Id
            orderby unit.Spot, unit.Serial
            select new
            {
                unit.Id,
                unit.Serial,
                unit.State,
                unit.Cleaning,
                unit.Place,
                unit.Spot,
                unit.Dates,
                Kind = kind.Name,
                Client = client == null ? null : new UnitOwner(client.Id, client.Name, client.Code),
            }
        ).ToListAsync(cancellation);
        var loans = await (
            from loan in db.UnitLoans.AsNoTracking()
            where loan.BackOn == null
            join client in db.Clients on loan.ClientId equals client.Id
            join unit in db.HairSystems on loan.HairSystemId equals unit.Id
            join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
            where client.HomeSalonId == salon.Id
            orderby loan.DueBackOn
            select new LoanRow(
                unit.Id,
                unit.Serial,
                kind.Name,
                unit.State,
                loan.DueBackOn,
                new UnitOwner(client.Id, client.Name, client.Code)
            )
        ).ToListAsync(cancellation);
        var lent = loans.Select(l => l.UnitId).ToHashSet();
        return new Screen(
            salon.Id,
            salon.Name,
            salons,
            today,
            [
                .. rows.Where(r => !lent.Contains(r.Id))
                    .Select(r => new Row(
                        r.Id,
                        r.Serial,
                        r.Kind,
                        r.State,
                        r.Cleaning,
                        r.Place,
                        r.Spot,
                        r.Dates.ArrivedOn ?? r.Dates.FirstBondedOn,
                        r.Client
                    ))
                    .GroupBy(r => r.Group)
                    .OrderBy(g => g.Key)
                    .Select(g => new Group(g.Key, g.Count(), [.. g.Take(MostOfAGroup)])),
            ],
            loans
        )
        {
            MayWrite = StaffPermissions.MayBook(person.StaffRole),
        };
    }

    public sealed record Screen(
        Guid SalonId,
        string Salon,
        IReadOnlyList<SalonChoice> Salons,
        LocalDate Today,
        IReadOnlyList<Group> Groups,
        IReadOnlyList<LoanRow> Loans
    )
    {
        public bool MayWrite { get; init; }
    }

    public sealed record Group(ShelfGroup Kind, int Count, IReadOnlyList<Row> Rows);

    /// <param name="Since">Since when it is here, or was first worn.</param>
    public sealed record Row(
        Guid Id,
        string Serial,
        string Kind,
        UnitState State,
        UnitCleaning? Cleaning,
        UnitPlace? Place,
        string? Spot,
        LocalDate? Since,
        UnitOwner? Client
    )
    {
        public ShelfGroup Group =>
            State switch
            {
                UnitState.Arrived or UnitState.Inspected => ShelfGroup.ToInspect,
                UnitState.Away => ShelfGroup.Away,
                _ when Cleaning == UnitCleaning.ToBeCleaned => ShelfGroup.ToBeCleaned,
                _ when Cleaning == UnitCleaning.Drying => ShelfGroup.Drying,
                UnitState.Accepted when Client is not null => ShelfGroup.ToPrepare,
                UnitState.EmergencySpare => ShelfGroup.Emergency,
                _ when Place == UnitPlace.Client => ShelfGroup.WithClients,
                _ => Client is null ? ShelfGroup.Stock : ShelfGroup.Ready,
            };

        public UnitStepKind? Next => UnitNextSteps.Awaited(State, Cleaning, onLoan: false);
    }

    public sealed record LoanRow(Guid UnitId, string Serial, string Kind, UnitState State, LocalDate DueBackOn, UnitOwner To);
}

/// <summary>How the shelf is told, what wants a hand first.</summary>
public enum ShelfGroup
{
    ToInspect,
    ToBeCleaned,
    Drying,

    /// <summary>To be coloured and cut in.</summary>
    ToPrepare,

    /// <summary>Clean and here: it may go on its client's head today.</summary>
    Ready,

    /// <summary>Nobody's: to lend, or to give to a client.</summary>
    Stock,
    Emergency,
    WithClients,
    Away,
}
