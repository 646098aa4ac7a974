using HairClinic.Web.Data;
using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Features.Binder;

/// <summary>Units with the dates of their lives and every promise, recognised by serial.</summary>
public sealed class ImportUnits(ClinicDb db, ImportStep order, Instant now) : SheetImport(db, order, now)
{
    private ClientCodeIndex _clients = null!;
    private NameIndex<Salon> _salons = new([], s => s.Name);
    private UnitKindIndex _kinds = null!;
    private Dictionary<Guid, string> _salonNames = [];
    private Dictionary<string, HairSystem> _units = [];
    private Dictionary<Guid, bool> _bonded = [];

    protected override async Task LoadAsync(CancellationToken cancellation)
    {
        _clients = await ClientCodeIndex.LoadAsync(Db, cancellation);
        var all = await Db.Salons.AsNoTracking().ToListAsync(cancellation);
        _salons = new(all, s => s.Name);
        _salonNames = all.ToDictionary(s => s.Id, s => s.Name);
        _kinds = await UnitKindIndex.LoadAsync(Db, cancellation);
        _units = await Db
            .HairSystems.Include(u => u.Promises)
            .AsSplitQuery()
            .ToDictionaryAsync(u => u.Serial, StringComparer.Ordinal, cancellation);
        _bonded = await Db
            .Bonds.GroupBy(b => b.HairSystemId)
            .Select(g => new { g.Key, Open = g.Any(b => b.RemovedOn == null) })
            .ToDictionaryAsync(b => b.Key, b => b.Open, cancellation);
    }

    protected override void ReadRow(SheetRow row)
    {
        if (Read(row, UnitRow.Table) is not { } read || !IsFirst(row, read.Serial))
            return;
        var place = read.Place is null ? null : _salons.Find(read.Place);
        if (read.Place is not null && place is null)
            Expect(row, UnitColumns.Place, "a salon of this practice, or nothing: {0}", Listed(_salons.Names));
        else if (read.ClientCode is not null && _clients.Find(read.ClientCode) is null)
            Expect(row, UnitColumns.ClientCode, "the code of a client in the book; bring the clients first");
        else if (KindOf(row, read) is { } kind)
            Write(row, Resolved(read, kind, place), kind, place);
    }

    private void Write(SheetRow row, UnitRow read, UnitKind kind, Salon? place)
    {
        if (_units.TryGetValue(read.Serial, out var unit))
        {
            Change(row, unit, read, kind, place);
            return;
        }
        unit = new HairSystem(Guid.CreateVersion7(), read.Serial, ClientId(read), kind.Id, read.Dates.SpecifiedOn);
        unit.ImportState(read.State ?? read.Dates.LastDatedState(), read.Dates, read.RetiredBecause, read.TimesRemade);
        Fill(unit, read, place);
        Db.HairSystems.Add(unit);
        Db.FindWords.Add(FindWordIndexer.For(unit));
        CountNew(row, unit);
    }

    private void Change(SheetRow row, HairSystem unit, UnitRow read, UnitKind kind, Salon? place)
    {
        var book = _kinds.RowOfUnit(unit, _clients.CodeOf(unit.ClientId), unit.PlaceSalonId is { } at ? _salonNames[at] : null);
        var merged = read.MergeWithBook(book);
        if (_bonded.TryGetValue(unit.Id, out var open))
        {
            if (open && merged.State is not (UnitState.Bonded or null) && !merged.State.Value.IsBondable())
            {
                Expect(row, UnitColumns.State, "bonded: a bond of this unit is still open; bring the bonds with its removal first");
                return;
            }
            // Once bonds are in the book, they say whether it is on a head.
            if (open || merged.State is UnitState.Bonded or UnitState.Accepted or UnitState.Prepared)
                merged = merged with
                {
                    State =
                        open ? UnitState.Bonded
                        : book.State is UnitState.Accepted or UnitState.Prepared ? book.State
                        : UnitState.Resting,
                };
        }
        if (unit.UnitKindId != kind.Id)
        {
            Expect(row, UnitColumns.Base, "the base and workshop this unit has in the book: {0}", _kinds.FullNameOf(unit.UnitKindId));
            return;
        }
        // On a head or at the workshop it is in no salon, whatever the sheet remembers.
        if (merged.State is { } state && (state == UnitState.Bonded || state.IsInFlight()))
            (merged, book) = (merged with { Place = null }, book with { Place = null });
        var differs = !merged.Cells().SequenceEqual(book.Cells());
        if (differs)
        {
            unit.ImportState(merged.State!.Value, merged.Dates, merged.RetiredBecause, merged.TimesRemade);
            if (!merged.Promises.Take(book.Promises.Count).SequenceEqual(book.Promises))
                throw new Refusal("Unit {0} has other promises in the book; promises are added, never rewritten.", unit.Serial);
            Fill(unit, merged with { Promises = [.. merged.Promises.Skip(book.Promises.Count)] }, place);
        }
        CountExisting(row, unit, differs);
    }

    private void Fill(HairSystem unit, UnitRow row, Salon? place)
    {
        foreach (var promised in row.Promises)
            unit.AddDeliveryPromise(Guid.CreateVersion7(), promised, saidOn: null);
        if (place is not null)
            unit.ImportPlace(place.Id);
        if (row.Price is { } price)
            unit.SetPrice(price.MinorUnits, price.Currency);
        if (ClientId(row) is { } clientId)
            unit.AssignToClient(clientId);
    }

    private UnitKind? KindOf(SheetRow row, UnitRow read)
    {
        var workshop = read.Workshop is { } made
            ? Find(_kinds.Workshops, MissingKind.Workshop, made, () => Db.Add(new Workshop(Guid.CreateVersion7(), made)).Entity)
            : null;
        var material = Find(_kinds.Bases, MissingKind.Base, read.Base!, () => Db.Add(UnitKindIndex.NewBase(read.Base!)).Entity);
        if (read.Kind is null && (KindInBook(read, material, workshop) ?? _kinds.FindMatching(material, workshop)) is { } alike)
            return alike;
        var name = read.Kind ?? (workshop is null ? material.Name : $"{material.Name}, {workshop.Name}");
        var kind = Find(_kinds.Kinds, MissingKind.UnitKind, name, () => Db.Add(_kinds.CreateKind(name, material, workshop)).Entity);
        if (kind.BaseMaterialId == material.Id && (workshop is null || kind.WorkshopId == workshop.Id))
            return kind;
        Expect(row, UnitColumns.Kind, "a unit kind with that base and workshop; this one is {0}", _kinds.FullNameOf(kind.Id));
        return null;
    }

    private UnitKind? KindInBook(UnitRow read, BaseMaterial material, Workshop? workshop) =>
        _units.TryGetValue(read.Serial, out var unit)
        && _kinds.KindOfUnit(unit) is var kind
        && kind.BaseMaterialId == material.Id
        && (workshop is null || kind.WorkshopId == workshop.Id)
            ? kind
            : null;

    private UnitRow Resolved(UnitRow read, UnitKind kind, Salon? place) =>
        read with
        {
            ClientCode = _clients.CodeOf(ClientId(read)),
            Kind = kind.Name,
            Base = _kinds.BaseNameOf(kind),
            Workshop = _kinds.WorkshopNameOf(kind),
            Place = place?.Name,
        };

    private Guid? ClientId(UnitRow read) => read.ClientCode is null ? null : _clients.Find(read.ClientCode);
}
