using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Features.Binder.Sheets;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Binder;

/// <summary>Bonds, open and ended, recognised by serial and day (and time, where one is given). Each falls due by the practice's own rule.</summary>
public sealed class ImportBonds(ClinicDb db, ImportStep order, Instant now) : SheetImport(db, order, now)
{
    private readonly Dictionary<Bond, int> _touched = [];
    private ClientCodeIndex _codes = null!;
    private bool _anyNew;
    private DueFacts _dues = null!;
    private ProductIndex _products = null!;
    private StylistIndex _stylists = null!;
    private Dictionary<Guid, Client> _clients = [];
    private Dictionary<Guid, Guid> _bases = [];
    private Dictionary<string, HairSystem> _units = [];
    private Dictionary<Guid, List<Bond>> _bonds = [];

    protected override async Task LoadAsync(CancellationToken cancellation)
    {
        _codes = await ClientCodeIndex.LoadAsync(Db, cancellation);
        _dues = await DueFacts.LoadAsync(Db, cancellation);
        _products = await ProductIndex.LoadAsync(Db, cancellation);
        _stylists = await StylistIndex.LoadAsync(Db, cancellation);
        _clients = await Db.Clients.AsNoTracking().Include(c => c.Events).AsSplitQuery().ToDictionaryAsync(c => c.Id, cancellation);
        _bases = await Db.UnitKinds.ToDictionaryAsync(k => k.Id, k => k.BaseMaterialId, cancellation);
        _units = await Db.HairSystems.ToDictionaryAsync(u => u.Serial, StringComparer.Ordinal, cancellation);
        _bonds = (await Db.Bonds.Include(b => b.Products).AsSplitQuery().ToListAsync(cancellation))
            .GroupBy(b => b.HairSystemId)
            .ToDictionary(g => g.Key, g => g.ToList());
    }

    protected override void ReadRow(SheetRow row)
    {
        if (
            Read(row, BondRow.Table) is not { } read
            || !IsFirst(row, $"{read.Serial}|{CellFormatter.Format(read.AppliedOn)}|{CellFormatter.Format(read.AppliedAt)}")
        )
            return;
        if (!_units.TryGetValue(read.Serial, out var unit))
            Expect(row, BondColumns.Serial, "the serial of a unit in the book; bring the units first");
        else if (_codes.Find(read.ClientCode!) is not { } clientId)
            Expect(row, BondColumns.ClientCode, "the code of a client in the book; bring the clients first");
        else if (unit.ClientId is { } wearer && _codes.ResolveMerged(wearer) != clientId)
            Expect(row, BondColumns.ClientCode, "{0}, whose unit it is", _codes.CodeOf(wearer)!);
        else if (FirstDisorder(read) is var (column, expected))
            Expect(row, column, expected, CellFormatter.Format(read.AppliedOn));
        else
            Write(row, read, unit, _clients[clientId]);
    }

    protected override Task FinishAsync(CancellationToken cancellation)
    {
        var all = _bonds.Values.SelectMany(b => b).ToList();
        var serials = _units.Values.ToDictionary(u => u.Id, u => u.Serial);
        var breaks = all.GroupBy(b => _codes.ResolveMerged(b.ClientId)).Concat(all.GroupBy(b => b.HairSystemId)).SelectMany(Breaks);
        foreach (
            var (bond, line, next, nextLine) in breaks
                .DistinctBy(b => (b.Bond, b.Next))
                .Where(b => b.Line is not null || b.NextLine is not null)
        )
        {
            Refuse(
                line ?? nextLine!.Value,
                "One head wears one unit at a time, and one unit is on one head: unit {0}, bonded on {1} ({2}), was not taken off before unit {3} was bonded on {4} ({5}).",
                serials[bond.HairSystemId],
                CellFormatter.Format(bond.AppliedOn),
                Where(line),
                serials[next.HairSystemId],
                CellFormatter.Format(next.AppliedOn),
                Where(nextLine)
            );
        }
        foreach (var own in _bonds.Values.Where(own => own.Exists(_touched.ContainsKey)))
            PutOn(_units[serials[own[0].HairSystemId]], own);
        // Bonds on heads were dated row by row; with their whole history in the book, each client's own bonds say better.
        if (_anyNew)
            Db.WorkItems.Add(WorkItemFactory.RefreshDueDates(clientId: null, Now));
        return Task.CompletedTask;
    }

    private void Write(SheetRow row, BondRow read, HairSystem unit, Client client)
    {
        var adhesive = read.Adhesive is null
            ? null
            : Find(
                _products.Names,
                MissingKind.Product,
                read.Adhesive,
                () => Db.Add(_products.CreateProduct(read.Adhesive, read.Attachment)).Entity
            );
        var lot = adhesive is null || read.Lot is null ? null : LotOf(adhesive, read.Lot);
        var stylist = read.Stylist is null
            ? null
            : Find(
                _stylists.Names,
                MissingKind.Stylist,
                read.Stylist,
                () => Db.Add(_stylists.NewStylist(read.Stylist, client.HomeSalonId)).Entity
            );
        read = read with { ClientCode = client.Code, Adhesive = adhesive?.Name, Lot = lot?.Code, Stylist = stylist?.Name };

        var own = _bonds.TryGetValue(unit.Id, out var list) ? list : _bonds[unit.Id] = [];
        if (InBook(own, read, client) is { } known)
        {
            Change(row, known, read, client);
            return;
        }
        var attachment = read.Attachment ?? (adhesive?.Kind == ProductKind.Tape ? Attachment.Tape : Attachment.Liquid);
        var bond = new Bond(
            Guid.CreateVersion7(),
            unit.Id,
            client.Id,
            read.AppliedOn!.Value,
            InstantOf(read, client),
            attachment,
            stylist?.Id
        );
        bond.SetProducts(
            adhesive is null ? [] : [(Guid.CreateVersion7(), new AppliedProduct(adhesive.Id, lot?.Id, read.Coats))],
            read.WaitsKept
        );
        // The window as it would have been told on the day: also for ended bonds, whose history is judged by it.
        bond.SetDueWindow(
            _dues
                .CalculatorFor(client, _bases[unit.UnitKindId], adhesive?.Id, attachment, adhesive?.LabelCureHours)
                .WindowFor(bond.AppliedOn)
        );
        Tell(bond, read);
        own.Add(bond);
        _touched[bond] = row.Row;
        Db.Bonds.Add(bond);
        _anyNew = true;
        CountNew(row, bond);
    }

    private void Change(SheetRow row, Bond bond, BondRow read, Client client)
    {
        _touched[bond] = row.Row;
        var book = RowOf(bond, read.Serial, client);
        var merged = read.MergeWithBook(book);
        var differs = !merged.Cells().SequenceEqual(book.Cells());
        if (differs)
        {
            // How it was made is history that someone wrote down; a file adds how it went on.
            var (made, asWritten) = (HowMade(merged).Cells(), HowMade(book).Cells());
            var at = Enumerable.Range(0, made.Count).FirstOrDefault(i => made[i] != asWritten[i], -1);
            if (at >= 0)
            {
                Expect(
                    row,
                    BondRow.Table.Columns[at],
                    "what the book says of this bond: {0}",
                    asWritten[at].Length == 0 ? "–" : asWritten[at]
                );
                return;
            }
            if (bond.Lift is not null && merged.Lift != bond.Lift with { SpotFixed = false })
                throw new Refusal(
                    "The lift of this bond is in the book already, reported on {0}; only the first lift counts.",
                    bond.Lift.ReportedOn
                );
            if (bond.RemovedOn is not null && merged.RemovedBecause != bond.RemovedBecause)
            {
                Expect(
                    row,
                    BondColumns.RemovedBecause,
                    "what the book says of this bond: {0}",
                    ChoiceWords.ToWord(bond.RemovedBecause) ?? "–"
                );
                return;
            }
            Tell(bond, merged with { RemovedOn = merged.RemovedOn == bond.RemovedOn ? null : merged.RemovedOn });
        }
        CountExisting(row, bond, differs);
    }

    private static BondRow HowMade(BondRow row) =>
        row with
        {
            RemovedOn = null,
            RemovedBecause = null,
            LiftedOn = null,
            LiftReportedOn = null,
            LiftEarliestOn = null,
            LiftLatestOn = null,
            LiftZone = null,
            LastSoundOn = null,
        };

    private static void Tell(Bond bond, BondRow row)
    {
        if (row.LastSoundOn is { } sound)
            bond.MarkSeenSound(sound);
        if (row.Lift is { } lift)
            bond.ReportLift(lift);
        if (row.RemovedOn is { } removed)
            bond.Remove(removed, row.RemovedBecause ?? (row.LiftToldOn is null ? RemovalReason.Other : RemovalReason.Lifted));
    }

    // A book that knows the head also knows where the unit is: on it while a bond is open, resting after the last.
    private void PutOn(HairSystem unit, List<Bond> own)
    {
        var open = own.Find(b => b.IsOpen);
        if (open is not null && unit.State != UnitState.Bonded && !unit.State.IsBondable())
        {
            Refuse(
                _touched.TryGetValue(open, out var line) ? line : _touched[own.First(_touched.ContainsKey)],
                "Unit {0} is {1}, but this bond was never taken off. Give the day it came off, or correct the unit.",
                unit.Serial,
                ChoiceWords.ToWord<UnitState>(unit.State)!
            );
            return;
        }
        var first = unit.Dates.FirstBondedOn ?? own.Min(b => b.AppliedOn);
        var state =
            open is not null ? UnitState.Bonded
            : unit.State == UnitState.Bonded ? UnitState.Resting
            : unit.State;
        if (state == unit.State && first == unit.Dates.FirstBondedOn)
            return;
        try
        {
            unit.ImportState(state, unit.Dates with { FirstBondedOn = first }, unit.RetiredBecause, unit.RemadeTimes);
        }
        catch (Refusal refusal)
        {
            Refuse(_touched[own.First(_touched.ContainsKey)], refusal.Sentence, [.. refusal.Arguments]);
        }
    }

    private IEnumerable<(Bond Bond, int? Line, Bond Next, int? NextLine)> Breaks(IEnumerable<Bond> group)
    {
        var chain = new BondSequenceCheck();
        foreach (var bond in group)
            chain.Add(bond, _touched.TryGetValue(bond, out var line) ? line : null);
        return chain.FindOverlaps();
    }

    private Bond? InBook(List<Bond> own, BondRow read, Client client)
    {
        var sameDay = own.Where(b => b.AppliedOn == read.AppliedOn && !_touched.ContainsKey(b)).ToList();
        return sameDay.FirstOrDefault(b => CellFormatter.Format(TimeOf(b, client)) == CellFormatter.Format(read.AppliedAt))
            ?? sameDay.FirstOrDefault(b => read.AppliedAt is null || b.AppliedAt is null);
    }

    private BondRow RowOf(Bond bond, string serial, Client client) =>
        BondRow.FromBond(
            bond,
            serial,
            client.Code,
            TimeOf(bond, client),
            UsedAdhesive.From(bond, _products.All),
            _stylists.NameOf(bond.AppliedBy)
        );

    private LocalTime? TimeOf(Bond bond, Client client) => bond.AppliedAt?.InZone(_dues.SalonOf(client).TimeZone).TimeOfDay;

    private Instant? InstantOf(BondRow row, Client client) =>
        row.AppliedAt is { } at ? (row.AppliedOn!.Value + at).InZoneLeniently(_dues.SalonOf(client).TimeZone).ToInstant() : null;

    private ProductLot LotOf(Product product, string code) =>
        Find(
            _products.Lots,
            MissingKind.Lot,
            code,
            () => new ProductIndex.NamedLot(code, product.ReceiveLot(Guid.CreateVersion7(), code, expiresOn: null)),
            product.Name
        ).Lot;

    private (SheetColumn Column, string Expected)? FirstDisorder(BondRow row)
    {
        var today = Now.InUtc().Date.PlusDays(1);
        return row switch
        {
            _ when row.AppliedOn > today => (BondColumns.AppliedOn, "a day that has come"),
            _ when row.RemovedOn < row.AppliedOn => (BondColumns.RemovedOn, "a day from {0} on, when it was bonded"),
            _ when row.RemovedOn > today => (BondColumns.RemovedOn, "a day that has come"),
            _ when row.LiftedOn > row.RemovedOn => (BondColumns.LiftedOn, "a day until it was taken down"),
            // What came off at home is told of afterwards.
            _ when row.LiftReportedOn > row.RemovedOn && row.RemovedBecause?.CameOffByItself() != true => (
                BondColumns.LiftReportedOn,
                "a day until it was taken down"
            ),
            _ when row.LiftedOn < row.AppliedOn => (BondColumns.LiftedOn, "a day from {0} on, when it was bonded"),
            _ when row.LiftLatestOn > (row.LiftToldOn ?? today) => (BondColumns.LiftLatestOn, "a day until it was told or found"),
            _ when row.LiftLatestOn < row.AppliedOn => (BondColumns.LiftLatestOn, "a day from {0} on, when it was bonded"),
            _ when row.LiftEarliestOn > row.LiftLatestOn => (
                BondColumns.LiftEarliestOn,
                "a day until the latest on which it can have lifted"
            ),
            _ when row.LiftEarliestOn is null != row.LiftLatestOn is null => (
                row.LiftLatestOn is null ? BondColumns.LiftLatestOn : BondColumns.LiftEarliestOn,
                "both days between which it lifted, or neither"
            ),
            _ when row.LastSoundOn < row.AppliedOn => (BondColumns.LastSoundOn, "a day from {0} on, when it was bonded"),
            _ when row.RemovedBecause is not null && row.RemovedOn is null => (
                BondColumns.RemovedOn,
                "the day it was taken down, as the row says why"
            ),
            _ when row.LiftZone is not null && row.LiftToldOn is null => (
                BondColumns.LiftReportedOn,
                "the day the lift was told or found, as the row says where"
            ),
            _ => null,
        };
    }

    private static string Where(int? line) => line is { } some ? $"row {some}" : "in the book";
}

/// <summary>
/// A head wears one unit at a time, and a unit is on one head: of all their bonds only the last can be open, and
/// none begins before the one before it came off.
/// </summary>
public sealed class BondSequenceCheck
{
    private readonly List<(Bond Bond, int? Line)> _links = [];

    /// <param name="line">The file's line; null for a bond that is only in the book.</param>
    public void Add(Bond bond, int? line) => _links.Add((bond, line));

    /// <summary>Each bond that should have ended before the next one began, with that next one.</summary>
    public IEnumerable<(Bond Bond, int? Line, Bond Next, int? NextLine)> FindOverlaps()
    {
        var ordered = _links.OrderBy(l => l.Bond.AppliedOn).ThenBy(l => l.Bond.AppliedAt ?? Instant.MinValue).ThenBy(l => l.Line).ToList();
        return ordered
            .Zip(ordered.Skip(1))
            .Where(pair => pair.First.Bond.RemovedOn is not { } removed || removed > pair.Second.Bond.AppliedOn)
            .Select(pair => (pair.First.Bond, pair.First.Line, pair.Second.Bond, pair.Second.Line));
    }
}
