using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Binder;

/// <summary>The practice's bases, workshops and unit kinds by name, with those an import has made so far.</summary>
public sealed class UnitKindIndex
{
    // A base nobody described yet: between one and nine months, common practice, no source; the practice edits it.
    private const int UnknownLifeFromDays = 30;
    private const int UnknownLifeToDays = 270;

    private readonly Dictionary<Guid, BaseMaterial> _bases;
    private readonly Dictionary<Guid, Workshop> _workshops;
    private readonly Dictionary<Guid, UnitKind> _kinds;

    private UnitKindIndex(List<BaseMaterial> bases, List<Workshop> workshops, List<UnitKind> kinds)
    {
        _bases = bases.ToDictionary(b => b.Id);
        _workshops = workshops.ToDictionary(w => w.Id);
        _kinds = kinds.ToDictionary(k => k.Id);
        (Bases, Workshops, Kinds) = (new(bases, b => b.Name), new(workshops, w => w.Name), new(kinds, k => k.Name));
    }

    public NameIndex<BaseMaterial> Bases { get; }

    public NameIndex<Workshop> Workshops { get; }

    public NameIndex<UnitKind> Kinds { get; }

    public static async Task<UnitKindIndex> LoadAsync(ClinicDb db, CancellationToken cancellation) =>
        new(
            await db.BaseMaterials.AsNoTracking().OrderBy(b => b.Id).ToListAsync(cancellation),
            await db.Workshops.AsNoTracking().OrderBy(w => w.Id).ToListAsync(cancellation),
            await db.UnitKinds.AsNoTracking().OrderBy(k => k.Id).ToListAsync(cancellation)
        );

    public static BaseMaterial NewBase(string name) => new(Guid.CreateVersion7(), name, UnknownLifeFromDays, UnknownLifeToDays);

    public UnitKind CreateKind(string name, BaseMaterial material, Workshop? workshop)
    {
        var kind = new UnitKind(Guid.CreateVersion7(), name, material.Id, workshop?.Id);
        _kinds.Add(kind.Id, kind);
        _bases.TryAdd(material.Id, material);
        if (workshop is not null)
            _workshops.TryAdd(workshop.Id, workshop);
        return kind;
    }

    /// <summary>A kind of that base from that workshop, where the file does not name one.</summary>
    public UnitKind? FindMatching(BaseMaterial material, Workshop? workshop) =>
        _kinds.Values.FirstOrDefault(k => k.BaseMaterialId == material.Id && k.WorkshopId == workshop?.Id);

    public string BaseNameOf(UnitKind kind) => _bases[kind.BaseMaterialId].Name;

    public UnitKind KindOfUnit(HairSystem unit) => _kinds[unit.UnitKindId];

    public string? WorkshopNameOf(UnitKind kind) => kind.WorkshopId is { } id ? _workshops[id].Name : null;

    public string FullNameOf(Guid kindId) =>
        string.Join(", ", new[] { _kinds[kindId].Name, BaseNameOf(_kinds[kindId]), WorkshopNameOf(_kinds[kindId]) }.OfType<string>());

    public UnitRow RowOfUnit(HairSystem unit, string? clientCode, string? place)
    {
        var kind = _kinds[unit.UnitKindId];
        return UnitRow.FromUnit(unit, clientCode, WorkshopNameOf(kind), BaseNameOf(kind), kind.Name, place);
    }
}
