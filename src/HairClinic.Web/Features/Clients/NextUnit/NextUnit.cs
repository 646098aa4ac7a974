using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Clients;

/// <summary>When a client's next unit must be ordered, what endangers them meanwhile, and the draft of the repeat order.</summary>
public sealed partial class NextUnit(ClinicDbFactory databases, WriteOnce writes, IClock clock)
{
    // What the page was opened with: its sliders are drawn in the same moment, and need not read it again.
    private Tried? _opened;

    /// <returns>Null: not there, or not theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        if (await db.Clients.AsNoTracking().UnmergedById(clientId).SingleOrDefaultAsync(cancellation) is not { } client)
            return null;
        var now = clock.GetCurrentInstant();
        var salon = await db.Salons.AsNoTracking().SingleAsync(s => s.Id == client.HomeSalonId, cancellation);
        var today = salon.DayOf(now);
        // For whoever needs none any more there is nothing to work out, and nothing that is to be ordered.
        if (client.HasLeft)
            return new Screen(client, salon.Name, today, null, []);
        var known = await ClientOutlook.LoadAsync(db, clientId, salon.Id, today, cancellation);
        var units = known.Units.Units;
        var drafts = units.Where(u => u.State == UnitState.Specified).Select(u => new Draft(u.Id, u.Serial, u.OrderNote)).ToList();
        if (known is not { Case: { } order, Outlook: { } outlook })
            return new Screen(client, salon.Name, today, null, drafts);
        _opened = TriedOf(known, order, outlook);
        var shelf = await db
            .HairSystems.AsNoTracking()
            .Where(u => u.ClientId == null && u.PlaceSalonId == salon.Id)
            .ToListAsync(cancellation);
        var rule = new ReorderRule(LeadTimeForecasts.DaysInSight);
        var plan = new Plan
        {
            Outlook = outlook,
            Curve = CurveOf(rule, order, outlook),
            KindName = known.Book.Kinds[order.UnitKindId].Name,
            LeadDays = known.Orders.UsualDays(order.UnitKindId),
            Preparation = known.Book.Preparation,
            MayBeForgotten = [.. known.Units.MayBeForgotten.Select(u => new UnitForgotten(u.Serial, u.WaitingSince ?? today))],
            OwnUnits = order.LifeOfNew.Own,
            OtherUnits = order.LifeOfNew.Others,
            DataCut = known.Book.WearModels.Life.Fit?.DataCut,
            InHand = [.. order.InHand.Select(id => UnitOf(known, id))],
            InFlight = [.. order.InFlight.Select(id => FlightOf(known, id))],
            NextReady = known.NextReadyDay(order),
            GoneLately = [.. GoneLately(units, today)],
            Remedies = RemediesOf(rule, order, known, [.. shelf.Where(s => s.State.IsBondable())]),
            Note = NoteOf(await LastAsync(db, known.Units.ToRepeat!.Id, cancellation)),
        };
        return new Screen(client, salon.Name, today, plan, drafts)
        {
            Bond = await db.Bonds.AsNoTracking().SingleOrDefaultAsync(b => b.ClientId == clientId && b.RemovedOn == null, cancellation),
            NextVisit = await NextVisitAsync(db, clientId, now, cancellation),
            Line = await WearLineBuilder.LoadAsync(db, clientId, today, known.ToWearLineForecast(), cancellation),
        };
    }

    /// <summary>What the sliders ask: the client's case, to be tried as often as somebody likes.</summary>
    public async Task<Tried?> LoadWhatIfBaselineAsync(Guid clientId, CancellationToken cancellation)
    {
        if (_opened?.Case.ClientId == clientId)
            return _opened;
        await using var db = databases.Open();
        if (await db.Clients.AsNoTracking().UnmergedById(clientId).SingleOrDefaultAsync(cancellation) is not { } client)
            return null;
        var salon = await db.Salons.AsNoTracking().SingleAsync(s => s.Id == client.HomeSalonId, cancellation);
        var known = await ClientOutlook.LoadAsync(db, clientId, salon.Id, salon.DayOf(clock.GetCurrentInstant()), cancellation);
        return known is { Case: { } order, Outlook: { } outlook } ? TriedOf(known, order, outlook) : null;
    }

    /// <summary>Drafts the repeat order: the same again, to be looked through before it goes out.</summary>
    /// <exception cref="Refusal">The client is not there, has no unit to repeat, or somebody took the same serial at this moment.</exception>
    public async Task<Outcome> DraftAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(key, nameof(NextUnit), input, db => DraftAsync(db, key, input, cancellation), cancellation);
        }
        catch (DbUpdateException e) when (WriteOnce.ViolatesConstraint(e, HairSystemMap.OneSerial))
        {
            throw new Refusal("Another unit got this serial a moment ago. Look at what is drafted below, then tap again.");
        }
    }

    private async Task<Outcome> DraftAsync(ClinicDb db, Guid key, Input input, CancellationToken cancellation)
    {
        await WriteLock.LockAsync(db, nameof(NextUnit), input.ClientId, cancellation);
        var client =
            await db.Clients.AsNoTracking().UnmergedById(input.ClientId).SingleOrDefaultAsync(cancellation)
            ?? throw new Refusal("This client is not there any more. They may have been merged with another record.");
        client.RequireNeed();
        var units = await db.HairSystems.Where(u => u.ClientId == client.Id).ToListAsync(cancellation);
        var drafts = units.Where(u => u.State == UnitState.Specified).ToList();
        if (drafts.Count > input.Known && drafts.MaxBy(u => u.Id) is { } other)
            return new Outcome(other.Id, other.Serial) { Already = true };
        var last =
            RepeatOrderRule.UnitToRepeat(units.OrderBy(u => u.Dates.OrderedOrFirstKnownOn()))
            ?? throw new Refusal("There is no unit yet that could be repeated.");
        var zone = await db.Salons.Where(s => s.Id == client.HomeSalonId).Select(s => s.Zone).SingleAsync(cancellation);
        var today = clock.Today(zone);
        var made = new List<HairSystem>();
        for (var left = Math.Max(1, input.Wanted - drafts.Count); left > 0; left--)
        {
            var serial = await UnitSerials.ProposeAsync(db, client, cancellation);
            var draft = HairSystem.DraftRepeatOrder(made.Count == 0 ? key : Guid.CreateVersion7(), serial, last, today, input.Note);
            made.Add(draft);
            db.HairSystems.Add(draft);
            // A word that leads to a unit is let in once the unit is there.
            await db.SaveChangesAsync(cancellation);
            db.FindWords.Add(FindWordIndexer.For(draft));
        }
        return new Outcome(made[0].Id, string.Join(", ", made.Select(d => d.Serial))) { Units = made.Count };
    }

    private static Task<HairSystem> LastAsync(ClinicDb db, Guid id, CancellationToken cancellation) =>
        db.HairSystems.AsNoTracking().Include(u => u.Repairs).SingleAsync(u => u.Id == id, cancellation);

    private static Task<LocalDate?> NextVisitAsync(ClinicDb db, Guid clientId, Instant now, CancellationToken cancellation) =>
        db
            .Visits.Where(v => v.ClientId == clientId && v.EndsAt >= now && v.State == Domain.Visits.VisitState.Booked)
            .OrderBy(v => v.StartsAt)
            .Select(v => (LocalDate?)v.Day)
            .FirstOrDefaultAsync(cancellation);
}
