using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Web.Data.Learning;

/// <summary>How long one unit lasted, in worn days.</summary>
public sealed record LifeSpell(
    Guid UnitId,
    Guid UnitKindId,
    Guid BaseMaterialId,
    Guid? WorkshopId,
    int WornDays,
    bool WornOut,
    Guid? Client,
    Spell Spell,
    WindowPrior? Window,
    IReadOnlyList<WearColumn> Columns
) : WearSpell(Client, Spell, Window, Columns);
