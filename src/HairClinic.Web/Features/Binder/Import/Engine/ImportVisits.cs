using HairClinic.Web.Data;
using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Features.Binder;

/// <summary>Visits past and booked, recognised by client, day and start. No chair, no pair of hands and no client is taken twice.</summary>
public sealed class ImportVisits(ClinicDb db, ImportStep order, Instant now) : SheetImport(db, order, now)
{
    private readonly Dictionary<Visit, int> _touched = [];
    private ClientCodeIndex _codes = null!;
    private ServiceIndex _services = null!;
    private StylistIndex _stylists = null!;
    private Dictionary<Guid, Salon> _salons = [];
    private Dictionary<Guid, OpeningDays> _opening = [];
    private NameIndex<Salon> _salonNames = new([], s => s.Name);
    private NameIndex<Chair> _chairNames = new([], c => c.Name);
    private Dictionary<Guid, Chair> _chairs = [];
    private List<Visit> _inBook = [];
    private Dictionary<string, Visit> _byTime = [];
    private Dictionary<string, Visit> _byBookKey = [];

    protected override async Task LoadAsync(CancellationToken cancellation)
    {
        _codes = await ClientCodeIndex.LoadAsync(Db, cancellation);
        _services = await ServiceIndex.LoadAsync(Db, cancellation);
        _stylists = await StylistIndex.LoadAsync(Db, cancellation);
        _salons = await Db
            .Salons.AsNoTracking()
            .Include(s => s.Hours)
            .Include(s => s.Closures)
            .AsSplitQuery()
            .ToDictionaryAsync(s => s.Id, cancellation);
        _opening = _salons.ToDictionary(s => s.Key, s => DueCalculator.OpeningDaysOf(s.Value));
        _salonNames = new(_salons.Values, s => s.Name);
        _chairs = await Db.Chairs.AsNoTracking().OrderBy(c => c.Id).ToDictionaryAsync(c => c.Id, cancellation);
        _chairNames = new(_chairs.Values, c => $"{_salons[c.SalonId].Name}: {c.Name}");
        _inBook = await Db.Visits.Include(v => v.Segments).AsSplitQuery().OrderBy(v => v.Id).ToListAsync(cancellation);
        // Of two visits at the same moment the one that was not called off is meant.
        foreach (var visit in _inBook.OrderBy(v => v.State is VisitState.Cancelled or VisitState.DidNotCome))
            _byTime.TryAdd(RowOf(visit).BookKey, visit);
        _byBookKey = _inBook.Where(v => v.BookKey is not null).ToDictionary(v => v.BookKey!, StringComparer.Ordinal);
    }

    protected override void ReadRow(SheetRow row)
    {
        if (Read(row, VisitRow.Table) is not { } read || !IsFirst(row, read.BookKey))
            return;
        if (_codes.Find(read.ClientCode) is not { } clientId)
            Expect(row, VisitColumns.ClientCode, "the code of a client in the book; bring the clients first");
        else if (_salonNames.Find(read.Salon!) is not { } salon)
            Expect(row, VisitColumns.Salon, "a salon of this practice: {0}", Listed(_salonNames.Names));
        else if (StartOf(read, salon) is not { } startsAt)
            Expect(row, VisitColumns.Start, "a time that exists: the clocks went forward that night");
        else if (read.State is not (null or VisitState.Booked or VisitState.Cancelled) && read.Day > salon.DayOf(Now))
            Expect(row, VisitColumns.State, "booked: that day has not come");
        else
            Write(row, read with { Salon = salon.Name, ClientCode = _codes.CodeOf(clientId)! }, clientId, salon, startsAt);
    }

    protected override Task FinishAsync(CancellationToken cancellation)
    {
        var clashes = new DoubleBookingCheck();
        foreach (var visit in _inBook)
        {
            int? line = _touched.TryGetValue(visit, out var at) ? at : null;
            if (visit.HoldsClient)
                clashes.Add(visit.ClientId, _codes.CodeOf(visit.ClientId)!, visit.StartsAt, visit.EndsAt, visit, line);
            foreach (var segment in visit.Segments.Where(s => s.HoldsChair))
                clashes.Add(segment.ChairId!.Value, _chairs[segment.ChairId.Value].Name, segment.StartsAt, segment.EndsAt, visit, line);
            foreach (var segment in visit.Segments.Where(s => s.HoldsHands))
                clashes.Add(segment.PersonId!.Value, _stylists.NameOf(segment.PersonId)!, segment.StartsAt, segment.EndsAt, visit, line);
        }
        foreach (var (earlier, later) in clashes.FindOverlaps())
        {
            Refuse(
                later.Line ?? earlier.Line!.Value,
                "{0} is taken twice: the visit of {1} at {2} ({3}) overlaps that of {4} at {5} ({6}).",
                later.Name,
                RowOf(later.Visit).ClientCode,
                ClockOf(later.Visit),
                Where(later.Line),
                RowOf(earlier.Visit).ClientCode,
                ClockOf(earlier.Visit),
                Where(earlier.Line)
            );
        }
        return Task.CompletedTask;
    }

    private void Write(SheetRow row, VisitRow read, Guid clientId, Salon salon, Instant startsAt)
    {
        var service = Find(
            _services.Names,
            MissingKind.Service,
            read.Service!,
            () => Db.Add(_services.CreateService(read.Service!, read.Minutes)).Entity
        );
        var chair = read.Chair is null
            ? null
            : Find(_chairNames, MissingKind.Chair, read.Chair, () => MakeChair(read.Chair, salon), salon.Name);
        var stylist = read.Stylist is null
            ? null
            : Find(_stylists.Names, MissingKind.Stylist, read.Stylist, () => Db.Add(_stylists.NewStylist(read.Stylist, salon.Id)).Entity);
        read = read with { Service = service.Name, Chair = chair?.Name, Stylist = stylist?.Name };
        var steps = ServiceIndex.StepsForMinutes(service, read.Minutes);
        if ((_byTime.GetValueOrDefault(read.BookKey) ?? _byBookKey.GetValueOrDefault(read.BookKey)) is { } known)
        {
            Change(row, known, read);
            return;
        }
        var visit = new Visit(Guid.CreateVersion7(), clientId, salon.Id, service.Id);
        visit.PutAt(steps, startsAt, chair?.Id, stylist?.Id, salon, [.. steps.Select(_ => Guid.CreateVersion7())]);
        var today = salon.DayOf(Now);
        visit.ImportState(read.State ?? (visit.Day < today ? VisitState.Done : VisitState.Booked), read.BookKey, today);
        visit.SetNote(read.Note);
        _inBook.Add(visit);
        _touched[visit] = row.Row;
        Db.Visits.Add(visit);
        CountNew(row, visit);
        DoubtDay(row, visit, salon);
    }

    // As on the day itself: it is taken, and said.
    private void DoubtDay(SheetRow row, Visit visit, Salon salon)
    {
        if (visit.State is not VisitState.Booked)
            return;
        if (visit.Day < salon.DayOf(Now))
            Doubt(row, "This visit is booked for {0}, which is past: did it take place?", CellFormatter.Format(visit.Day));
        else if (!_opening[salon.Id].IsOpen(visit.Day))
            Doubt(row, "{0} is closed on {1}.", salon.Name, CellFormatter.Format(visit.Day));
    }

    private void Change(SheetRow row, Visit visit, VisitRow read)
    {
        _touched[visit] = row.Row;
        var book = RowOf(visit);
        var merged = read.MergeWithBook(book);
        // A visit called off in the book since the file was written stays so.
        if (book.State is VisitState.Cancelled or VisitState.DidNotCome)
            merged = merged with { State = book.State };
        var differs = !merged.Cells().SequenceEqual(book.Cells());
        if (differs)
        {
            var placed = merged with { State = book.State, Note = book.Note };
            var at = Enumerable.Range(0, placed.Cells().Count).FirstOrDefault(i => placed.Cells()[i] != book.Cells()[i], -1);
            if (at >= 0)
            {
                Expect(
                    row,
                    VisitRow.Table.Columns[at],
                    "what the book says of this visit: {0}; move it on its day, not by a file",
                    book.Cells()[at].Length == 0 ? "–" : book.Cells()[at]
                );
                return;
            }
            visit.ImportState(merged.State!.Value, visit.BookKey ?? read.BookKey, _salons[visit.SalonId].DayOf(Now));
            visit.SetNote(merged.Note);
        }
        CountExisting(row, visit, differs);
    }

    private Chair MakeChair(string name, Salon salon)
    {
        var position = _chairs.Values.Where(c => c.SalonId == salon.Id).Select(c => c.Position).DefaultIfEmpty(0).Max() + 1;
        var chair = Db.Add(new Chair(Guid.CreateVersion7(), salon.Id, name, position)).Entity;
        _chairs.Add(chair.Id, chair);
        return chair;
    }

    private VisitRow RowOf(Visit visit) =>
        VisitRow.FromVisit(
            visit,
            _codes.CodeOf(visit.ClientId)!,
            _salons[visit.SalonId],
            _services.NameOf(visit.ServiceKindId),
            visit.ChairId is { } chair ? _chairs[chair].Name : null,
            _stylists.NameOf(visit.PersonId)
        );

    // In autumn an hour comes twice; the first is taken. In spring one does not come at all.
    private static Instant? StartOf(VisitRow row, Salon salon)
    {
        var mapping = salon.TimeZone.MapLocal(row.Day!.Value + row.Start!.Value);
        return mapping.Count == 0 ? null : mapping.First().ToInstant();
    }

    private string ClockOf(Visit visit) => $"{CellFormatter.Format(visit.Day)} {CellFormatter.Format(RowOf(visit).Start)}";

    private static string Where(int? line) => line is { } some ? $"row {some}" : "in the book";
}

/// <summary>Who or what is busy when. The database has the last word; this tells all clashes of a file at once, with both lines.</summary>
public sealed class DoubleBookingCheck
{
    private readonly List<Spell> _spells = [];

    /// <param name="what">The chair or the person.</param>
    /// <param name="line">The file's line; null for a visit that is only in the book.</param>
    public void Add(Guid what, string name, Instant from, Instant to, Visit visit, int? line) =>
        _spells.Add(new(what, name, from, to, visit, line));

    /// <summary>Pairs that want the same chair or hands at once, at least one of them from the file. Ends are not included.</summary>
    public IEnumerable<(Spell Earlier, Spell Later)> FindOverlaps()
    {
        foreach (var group in _spells.GroupBy(s => s.What))
        {
            Spell? longest = null;
            foreach (var spell in group.OrderBy(s => s.From).ThenBy(s => s.Line))
            {
                if (
                    longest is not null
                    && spell.From < longest.To
                    && (spell.Line ?? longest.Line) is not null
                    && spell.Visit != longest.Visit
                )
                    yield return (longest, spell);
                if (longest is null || spell.To > longest.To)
                    longest = spell;
            }
        }
    }

    public sealed record Spell(Guid What, string Name, Instant From, Instant To, Visit Visit, int? Line);
}
