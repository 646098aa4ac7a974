using HairClinic.Web.AccessLog;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Clients;

/// <summary>The one page about a client: what is on the head, when it is next due and why, and everything around it.</summary>
public sealed partial class Card(ClinicDbFactory databases, AccessLogStore log, CurrentActor current, IClock clock)
{
    private const int MostVisits = 100;
    private const int MostNotes = 20;

    /// <returns>Neither screen nor lead: not there, or not theirs.</returns>
    public async Task<Opened> OpenAsync(Guid clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var client = await db
            .Clients.AsNoTracking()
            .Include(c => c.Events)
            .Include(c => c.CareFacts)
            .Where(c => c.Id == clientId)
            .SingleOrDefaultAsync(cancellation);
        if (client is null || client.MergedIntoId is not null)
            return new Opened(null, client?.MergedIntoId);
        if (ByGrant(client))
            await log.NoteAsync(db, AccessAction.OpenedCardByGrant, clientId, cancellation: cancellation);

        var now = clock.GetCurrentInstant();
        var salons = await db
            .Salons.AsNoTracking()
            .Include(s => s.Hours)
            .Include(s => s.Closures)
            .ToDictionaryAsync(s => s.Id, cancellation);
        var home = salons[client.HomeSalonId];
        var today = home.DayOf(now);
        var settings = await db.PracticeSettings.AsNoTracking().SingleAsync(cancellation);
        var units = await WearLineBuilder.UnitsOf(db, clientId).ToListAsync(cancellation);
        var bonds = await (
            from bond in db.Bonds.AsNoTracking()
            where bond.ClientId == clientId
            join person in db.People on bond.AppliedBy equals person.Id into people
            from person in people.DefaultIfEmpty()
            orderby bond.AppliedOn, bond.AppliedAt
            select new Bonded(bond, person == null ? null : person.Name)
        ).ToListAsync(cancellation);
        var last = bonds.LastOrDefault(b => b.Bond.IsOpen) ?? bonds.LastOrDefault();
        var recipe = last is null ? [] : await RecipeOf(db, last.Bond.Id).ToListAsync(cancellation);
        var visits = await VisitsOf(db, clientId).ToListAsync(cancellation);
        var notes = await NotesOf(db, clientId).ToListAsync(cancellation);

        var addresses = await AddressesOf(db, clientId).ToListAsync(cancellation);

        var outlook = await ClientOutlook.LoadAsync(db, clientId, home.Id, today, cancellation);
        var loans = outlook.Units.Borrowed.ToDictionary(b => b.Loan.HairSystemId, b => b.Loan);

        var worn = last is { Bond.IsOpen: true } ? WornOf(last.Bond, units, recipe, settings, today, now) : null;
        return new Opened(
            new Screen
            {
                Client = client,
                HomeSalon = home.Name,
                AtHome = !ByGrant(client),
                Today = today,
                Now = now,
                HomeZone = home.TimeZone,
                Line = WearLineBuilder.Build(
                    units,
                    [.. bonds.Select(b => b.Bond)],
                    [.. visits.Where(v => v.Took).Select(TickOf)],
                    today,
                    client.HasLeft ? WearLineForecast.Unknown : outlook.ToWearLineForecast()
                ),
                NextUnit = client.HasLeft ? null : outlook.Outlook,
                NeedEndedBecause = ByGrant(client) ? null : client.NeedEndedBecause,
                Worn = worn,
                TakenDown = last is null ? null : TakenDownOf(last.Bond, MayReadHealth, today),
                Clearances = await ClearancesOf(db, clientId, today).ToListAsync(cancellation),
                Recipe = last is null ? null : new Recipe(last.Bond, SerialOf(units, last.Bond.HairSystemId), last.By, recipe),
                Wash = WashOf(client, last?.Bond, worn, visits, home),
                Visits = visits,
                NextVisit = visits.LastOrDefault(v =>
                    v.EndsAt >= now && v.State is VisitState.Booked or VisitState.Arrived or VisitState.InChair
                ),
                Units =
                [
                    .. units
                        .OrderByDescending(u => u.Unit.Dates.ArrivedOn ?? LocalDate.MaxIsoValue)
                        .Select(u => UnitOf(u, bonds, salons, loans)),
                ],
                Notes = notes,
                Addresses = addresses,
            },
            null
        );
    }

    // Owners and people of the home salon open it as a matter of course; others, and trainees always, because they were let in.
    private bool ByGrant(Client client) =>
        current.Actor is PersonActor person && !StaffPermissions.MayManageClient(person, client.HomeSalonId);

    private bool MayReadHealth => current.Actor is PersonActor person && StaffPermissions.MayReadHealth(person);

    private static IQueryable<RecipeLine> RecipeOf(ClinicDb db, Guid bondId) =>
        from use in db.BondProducts
        where use.BondId == bondId
        join product in db.Products on use.ProductId equals product.Id
        join lot in db.ProductLots on use.LotId equals lot.Id into lots
        from lot in lots.DefaultIfEmpty()
        orderby product.Kind, product.Name
        select new RecipeLine(product.Name, lot == null ? null : lot.Code, use.Coats, product.LabelCureHours);

    private static IQueryable<VisitRow> VisitsOf(ClinicDb db, Guid clientId) =>
        (
            from visit in db.Visits
            where visit.ClientId == clientId
            join service in db.ServiceKinds on visit.ServiceKindId equals service.Id
            join salon in db.Salons on visit.SalonId equals salon.Id
            join person in db.People on visit.PersonId equals person.Id into people
            from person in people.DefaultIfEmpty()
            join record in db.VisitRecords on visit.Id equals record.VisitId into records
            from record in records.DefaultIfEmpty()
            orderby visit.StartsAt descending
            select new VisitRow(
                visit.Day,
                visit.StartsAt,
                visit.EndsAt,
                salon.Zone,
                salon.Name,
                service.Name,
                service.Purpose,
                person == null ? null : person.Name,
                visit.State,
                visit.Note,
                record == null ? null : record.Note,
                record != null && record.FoundLifted
            )
        ).Take(MostVisits);

    private static IQueryable<NoteRow> NotesOf(ClinicDb db, Guid clientId) =>
        (
            from note in db.ContactNotes
            where note.ClientId == clientId
            join person in db.People on note.By equals person.Id into people
            from person in people.DefaultIfEmpty()
            orderby note.At descending
            select new NoteRow(note.Kind, note.At, person == null ? null : person.Name, note.Until, note.Reason)
        ).Take(MostNotes);

    private static IQueryable<OpeningAddress> AddressesOf(ClinicDb db, Guid clientId) =>
        db.OpeningAddresses.AsNoTracking().Where(a => a.ClientId == clientId && a.EndedAt == null && a.ConfirmedAt == null);

    private static IQueryable<ClearanceRow> ClearancesOf(ClinicDb db, Guid clientId, LocalDate today) =>
        (
            from clearance in db.Clearances
            where clearance.ClientId == clientId && clearance.From <= today && (clearance.Until == null || clearance.Until >= today)
            join product in db.Products on clearance.ProductId equals product.Id into products
            from product in products.DefaultIfEmpty()
            select new ClearanceRow(clearance.Kind, product == null ? null : product.Name)
        ).Distinct();

    private static WearLineVisit TickOf(VisitRow visit) => new(visit.Day, visit.Service);
}
