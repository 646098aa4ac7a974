using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Web.Learning;

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
    IReadOnlyList<WearCovariate> Columns
) : WearSpell(Client, Spell, Window, Columns)
{
    /// <summary>The life before and after its first repair; one stretch where it never was repaired.</summary>
    public IReadOnlyList<UnitStretch> Stretches { get; init; } = [];

    public override IEnumerable<WearRow> Rows =>
        Stretches.Count < 2 && Stretches.All(s => s.Repaired == 0)
            ? base.Rows
            : Stretches.Select(s => new WearRow(
                s.Spell,
                s.Entered,
                s.Repaired == 0 ? Columns : [.. Columns, WearCovariate.Of(WearHabit.Repaired, s.Repaired)]
            ));
}
