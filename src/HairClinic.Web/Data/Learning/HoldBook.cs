using HairClinic.Domain.Bonding;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Wear;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Data.Learning;

/// <summary>Bonds of some clients or all, and what is needed to read them as spells of hold.</summary>
public sealed class HoldBook
{
    private readonly List<HoldWindowRule> rules;
    private readonly HashSet<Guid> adhesives;
    private readonly Dictionary<Guid, Guid> bases;
    private readonly ILookup<Guid, Bond> bonds;

    private HoldBook(List<HoldWindowRule> rules, HashSet<Guid> adhesives, Dictionary<Guid, Guid> bases, HabitBook habits, List<Bond> bonds)
    {
        (this.rules, this.adhesives, this.bases, Habits) = (rules, adhesives, bases, habits);
        // A unit may be out of the reader's sight although the bond is not.
        this.bonds = bonds.Where(b => bases.ContainsKey(b.HairSystemId)).OrderBy(b => b.AppliedOn).ToLookup(b => b.ClientId);
    }

    public HabitBook Habits { get; }

    /// <param name="clientIds">Null for every client's.</param>
    /// <param name="tracked">The bonds are those being worked on: what is changed on them before it is saved counts.</param>
    public static async Task<HoldBook> LoadAsync(
        ClinicDb db,
        IReadOnlyCollection<Guid>? clientIds,
        bool tracked,
        CancellationToken cancellation
    )
    {
        var asked = db.Bonds.Include(b => b.Products).Where(b => clientIds == null || clientIds.Contains(b.ClientId));
        var bonds = await (tracked ? asked : asked.AsNoTracking()).ToListAsync(cancellation);
        var adhesives = await db
            .Products.Where(p => p.Kind == ProductKind.Adhesive || p.Kind == ProductKind.Tape)
            .Select(p => p.Id)
            .ToHashSetAsync(cancellation);
        var bases = await (
            from unit in db.HairSystems
            join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
            where clientIds == null || db.Bonds.Any(b => b.HairSystemId == unit.Id && clientIds.Contains(b.ClientId))
            select new { unit.Id, kind.BaseMaterialId }
        ).ToDictionaryAsync(u => u.Id, u => u.BaseMaterialId, cancellation);
        return new HoldBook(
            await db.HoldWindowRules.AsNoTracking().ToListAsync(cancellation),
            adhesives,
            bases,
            await HabitBook.LoadAsync(db, clientIds, cancellation),
            bonds
        );
    }

    /// <param name="today">Bonds on heads held until then at least.</param>
    public IEnumerable<HoldSpell> All(LocalDate today) => bonds.SelectMany(own => own).Select(b => SpellOf(b, today));

    /// <summary>What a client's bonds had told up to a day.</summary>
    public List<HoldSpell> Until(Guid clientId, LocalDate day) =>
        [.. bonds[clientId].Where(b => b.AppliedOn < day || b.RemovedOn <= day).Select(b => SpellOf(b, day))];

    /// <summary>The bond on the client's head, or the last there was.</summary>
    public Bond? Last(Guid clientId) => bonds[clientId].LastOrDefault();

    public (Guid BaseMaterialId, Guid? AdhesiveId) MadeOf(Bond bond) =>
        (bases[bond.HairSystemId], bond.Products.FirstOrDefault(p => adhesives.Contains(p.ProductId))?.ProductId);

    /// <summary>A window's prior; one of no width is taken to spread over its last day.</summary>
    public static WindowPrior WideOf(HoldWindow window) =>
        WindowPrior.Of(
            LifeDistribution.Weibull,
            window.EarliestWeeks < window.LatestWeeks ? 7.0 * window.EarliestWeeks : 7.0 * window.LatestWeeks - 1,
            7.0 * window.LatestWeeks
        );

    /// <returns>Null for a row of no width, which is taken at its word.</returns>
    public static WindowPrior? PriorOf(HoldWindowRule rule) =>
        rule.LatestWeeks > rule.EarliestWeeks
            ? WindowPrior.Of(LifeDistribution.Weibull, 7.0 * rule.EarliestWeeks, 7.0 * rule.LatestWeeks)
            : null;

    /// <summary>What bears on a bond's hold: what it is made with, and the client's habits.</summary>
    public IReadOnlyList<WearColumn> ColumnsOf(Guid clientId, LocalDate appliedOn, Guid baseId, Guid? adhesiveId, bool? waitsKept)
    {
        var columns = new List<WearColumn> { WearColumn.Base(baseId) };
        if (adhesiveId is { } adhesive)
            columns.Add(WearColumn.Adhesive(adhesive));
        if (waitsKept == false)
            columns.Add(WearColumn.Of(WearHabit.WaitsCut));
        columns.AddRange(Habits.ForHold(clientId, appliedOn));
        return columns;
    }

    private HoldSpell SpellOf(Bond bond, LocalDate today)
    {
        var baseId = bases[bond.HairSystemId];
        var glue = bond.Products.FirstOrDefault(p => adhesives.Contains(p.ProductId));
        return new HoldSpell(
            bond.Id,
            bond.AppliedOn,
            baseId,
            glue?.ProductId,
            glue?.LotId,
            bond.ClientId,
            Spell.Of(HoldObservation.Of(bond, today)),
            WindowOf(baseId, glue?.ProductId, bond.Attachment),
            ColumnsOf(bond.ClientId, bond.AppliedOn, baseId, glue?.ProductId, bond.WaitsKept)
        );
    }

    private WindowPrior? WindowOf(Guid baseId, Guid? adhesiveId, Attachment attachment)
    {
        try
        {
            return PriorOf(HoldWindowRule.Choose(rules, baseId, adhesiveId, attachment));
        }
        catch (Refusal)
        {
            // No row fits any more: nothing can be said of how long this one should have held.
            return null;
        }
    }
}
