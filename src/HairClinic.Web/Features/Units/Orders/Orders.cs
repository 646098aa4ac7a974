using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Units;

/// <summary>Every unit from draft to shelf: promised beside likely, how late, what the workshop asks, and what to chase today.</summary>
public sealed class Orders(ClinicDbFactory databases, CurrentActor current, IClock clock)
{
    public const int PageSize = 50;

    private static readonly UnitState[] OnTheWay =
    [
        UnitState.Specified,
        UnitState.Ordered,
        UnitState.Acknowledged,
        UnitState.Shipped,
        UnitState.Remake,
        UnitState.Arrived,
        UnitState.Inspected,
        UnitState.Accepted,
        UnitState.Away,
    ];

    public async Task<Screen> OpenAsync(OrdersQuestion asked, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var salons = await db.Salons.AsNoTracking().ToDictionaryAsync(s => s.Id, cancellation);
        var rows = await RowsAsync(db, asked, salons, cancellation);
        var counts = Enum.GetValues<OrdersPart>().ToDictionary(p => p, p => rows.Count(r => r.IsIn(p)));
        var part = rows.Where(r => r.IsIn(asked.Part)).OrderBy(r => r.Chase.Count == 0).ThenBy(r => r.Presses).ThenBy(r => r.Serial);
        var page = part.Skip((asked.Page - 1) * PageSize).Take(PageSize).ToList();
        var own = current.Person.Salons;
        return new Screen(
            asked,
            counts,
            await WithLikelyAsync(db, page, cancellation),
            await db.Workshops.OrderBy(w => w.Name).Select(w => new Choice(w.Id, w.Name)).ToListAsync(cancellation),
            [.. salons.Values.Where(s => own.Contains(s.Id)).OrderBy(s => s.Name).Select(s => new Choice(s.Id, s.Name))]
        )
        {
            MayWrite = StaffPermissions.MayBook(current.Person.StaffRole),
            DatesToCheck = await OpenDateChecks.Query(db, current.Person).CountAsync(cancellation),
        };
    }

    /// <summary>All rows of the filters, for a download.</summary>
    public async Task<IReadOnlyList<Row>> RowsForExportAsync(OrdersQuestion asked, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var salons = await db.Salons.AsNoTracking().ToDictionaryAsync(s => s.Id, cancellation);
        var rows = (await RowsAsync(db, asked, salons, cancellation))
            .Where(r => r.IsIn(asked.Part))
            .OrderBy(r => r.Serial, StringComparer.Ordinal)
            .ToList();
        return await WithLikelyAsync(db, rows, cancellation);
    }

    /// <summary>Of every part, as far as workshop and salon are asked for.</summary>
    private async Task<List<Row>> RowsAsync(
        ClinicDb db,
        OrdersQuestion asked,
        Dictionary<Guid, Salon> salons,
        CancellationToken cancellation
    )
    {
        var found = await (
            from unit in db.HairSystems.AsNoTracking()
            where OnTheWay.Contains(unit.State)
            join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
            join workshop in db.Workshops on kind.WorkshopId equals workshop.Id into made
            from workshop in made.DefaultIfEmpty()
            join order in db.WorkshopOrders on unit.OrderId equals order.Id into orders
            from order in orders.DefaultIfEmpty()
            join client in db.Clients on unit.ClientId equals client.Id into owners
            from client in owners.DefaultIfEmpty()
            where client == null || client.MergedIntoId == null && client.ErasedAt == null
            select new
            {
                unit.Id,
                unit.Serial,
                unit.State,
                unit.Cleaning,
                unit.Dates,
                unit.PlaceSalonId,
                unit.PriceMinor,
                unit.Currency,
                Kind = kind.Name,
                WorkshopId = order != null ? order.WorkshopId : kind.WorkshopId,
                Workshop = workshop == null ? null : workshop.Name,
                OrderId = (Guid?)order.Id,
                Number = order == null ? null : order.Number,
                OrderSalon = (Guid?)order.SalonId,
                Client = client == null ? null : new UnitOwner(client.Id, client.Name, client.Code),
                Home = (Guid?)client.HomeSalonId,
            }
        ).ToListAsync(cancellation);
        var ids = found.Select(f => f.Id).ToList();
        var promises = (
            await db.PromiseRevisions.AsNoTracking().Where(p => ids.Contains(p.HairSystemId)).ToListAsync(cancellation)
        ).ToLookup(p => p.HairSystemId);
        var questions = (
            await db
                .UnitQuestions.Where(q => q.AnsweredOn == null && ids.Contains(q.HairSystemId))
                .Select(q => q.HairSystemId)
                .ToListAsync(cancellation)
        ).ToLookup(id => id);
        var arrivals = (
            await db.UnitArrivals.AsNoTracking().Where(a => a.Decision == null && ids.Contains(a.HairSystemId)).ToListAsync(cancellation)
        ).ToLookup(a => a.HairSystemId);
        var away = (
            await db.UnitRepairs.AsNoTracking().Where(r => r.DoneOn == null && ids.Contains(r.HairSystemId)).ToListAsync(cancellation)
        ).ToLookup(r => r.HairSystemId);
        var now = clock.GetCurrentInstant();
        var mine = current.Person.AtSalon ?? current.Person.Salons[0];
        return
        [
            .. found
                .Select(f =>
                {
                    var salonId = f.PlaceSalonId ?? f.Home ?? f.OrderSalon ?? mine;
                    var today = salons[salonId].DayOf(now);
                    var own = promises[f.Id].OrderBy(p => p.Number).ToList();
                    var claim = arrivals[f.Id].MaxBy(a => a.Number)?.ClaimUntil;
                    var back = away[f.Id].MaxBy(r => r.SentOn)?.BackPromisedFor;
                    return new Row
                    {
                        UnitId = f.Id,
                        Serial = f.Serial,
                        State = f.State,
                        Kind = f.Kind,
                        WorkshopId = f.WorkshopId,
                        Workshop = f.Workshop,
                        OrderId = f.OrderId,
                        OrderNumber = f.Number,
                        Client = f.Client,
                        SalonId = salonId,
                        Today = today,
                        OrderedOn = f.Dates.OrderedOn,
                        FirstPromise = own.FirstOrDefault()?.PromisedFor,
                        Promise = f.State == UnitState.Away ? back : own.LastOrDefault()?.PromisedFor,
                        ClaimUntil = claim,
                        OpenQuestions = questions[f.Id].Count(),
                        PriceMinor = StaffPermissions.MaySeeMoney(current.Person.StaffRole) ? f.PriceMinor : null,
                        Currency = f.Currency,
                        Chase = OrderChase.Reasons(
                            f.State,
                            today,
                            f.Dates.OrderedOn,
                            own.LastOrDefault()?.PromisedFor,
                            questions[f.Id].Count(),
                            back
                        ),
                        Next = UnitNextSteps.Awaited(f.State, f.Cleaning, onLoan: false),
                    };
                })
                .Where(r => (asked.WorkshopId ?? r.WorkshopId) == r.WorkshopId && (asked.SalonId ?? r.SalonId) == r.SalonId),
        ];
    }

    // Only of what is shown: each is a sum of its own.
    private static async Task<List<Row>> WithLikelyAsync(ClinicDb db, IReadOnlyList<Row> rows, CancellationToken cancellation)
    {
        var ids = rows.Where(r => r.State.IsInFlight()).Select(r => r.UnitId).ToList();
        if (ids.Count == 0)
            return [.. rows];
        var book = await ReorderFacts.LoadAsync(db, cancellation);
        var units = await db
            .HairSystems.AsNoTracking()
            .Include(u => u.Promises)
            .Where(u => ids.Contains(u.Id))
            .ToDictionaryAsync(u => u.Id, cancellation);
        var asked = (
            await OpenDateChecks.OfOrdersWaitedFor(db).Where(c => ids.Contains(c.HairSystemId!.Value)).ToListAsync(cancellation)
        ).ToLookup(c => c.HairSystemId);
        return
        [
            .. rows.Select(r =>
                !units.TryGetValue(r.UnitId, out var unit) ? r
                : OrderWaitingCheck.MayBeForgotten(unit, asked[unit.Id].FirstOrDefault()?.From) ? r with { MayBeForgotten = true }
                : r with { Likely = book.LeadTimesOn(r.Today).ArrivalRange(unit) }
            ),
        ];
    }

    public sealed record Screen(
        OrdersQuestion Asked,
        IReadOnlyDictionary<OrdersPart, int> Counts,
        IReadOnlyList<Row> Rows,
        IReadOnlyList<Choice> Workshops,
        IReadOnlyList<Choice> Salons
    )
    {
        public bool MayWrite { get; init; }

        /// <summary>Of units and bonds that wait for somebody to say whether they are right.</summary>
        public int DatesToCheck { get; init; }

        public bool HasMore => Counts[Asked.Part] > Asked.Page * PageSize;
    }

    public sealed record Choice(Guid Id, string Name);

    public sealed record Row
    {
        public required Guid UnitId { get; init; }
        public required string Serial { get; init; }
        public required UnitState State { get; init; }
        public required string Kind { get; init; }
        public Guid? WorkshopId { get; init; }
        public string? Workshop { get; init; }
        public Guid? OrderId { get; init; }
        public string? OrderNumber { get; init; }

        /// <summary>Null for the stock.</summary>
        public UnitOwner? Client { get; init; }

        public required Guid SalonId { get; init; }

        /// <summary>That salon's day.</summary>
        public required LocalDate Today { get; init; }

        public LocalDate? OrderedOn { get; init; }

        /// <summary>What was promised first: lateness is judged against it.</summary>
        public LocalDate? FirstPromise { get; init; }

        public LocalDate? Promise { get; init; }

        /// <summary>The days between which it will be here with 80 % chance.</summary>
        public (LocalDate Early, LocalDate Late)? Likely { get; init; }

        /// <summary>It is waited for so long that nobody counts on it until somebody says that it is still on its way.</summary>
        public bool MayBeForgotten { get; init; }

        public LocalDate? ClaimUntil { get; init; }
        public int OpenQuestions { get; init; }
        public long? PriceMinor { get; init; }
        public string? Currency { get; init; }
        public required IReadOnlyList<ChaseReason> Chase { get; init; }

        /// <summary>The step that is waited for.</summary>
        public UnitStepKind? Next { get; init; }

        /// <summary>Days past the first promise; null where it is not late.</summary>
        public int? DaysLate => State.IsInFlight() && FirstPromise < Today ? Period.DaysBetween(FirstPromise.Value, Today) : null;

        /// <summary>What presses most comes first.</summary>
        internal LocalDate Presses => ClaimUntil ?? Promise ?? OrderedOn ?? LocalDate.MaxIsoValue;

        internal bool IsIn(OrdersPart part) =>
            part switch
            {
                OrdersPart.ToChase => Chase.Count > 0,
                OrdersPart.Drafts => State == UnitState.Specified,
                OrdersPart.AtWorkshop => State.IsInFlight() || State == UnitState.Away,
                OrdersPart.ToInspect => State is UnitState.Arrived or UnitState.Inspected,
                OrdersPart.ToPrepare => State == UnitState.Accepted,
                _ => true,
            };
    }
}
