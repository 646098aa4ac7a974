using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>All that a replay of the practice's past reads: the records, to be cut at any earlier day, and the practice's rows.</summary>
public sealed class PastRecords
{
    private PastRecords(HoldFacts holds, LifeFacts lives, List<WearFactor> factors, LocalDate today)
    {
        (Holds, Lives, Today) = (holds, lives, today);
        HoldFactors = WearModelPair.FactorsByHabit(factors, LifetimeKind.Hold);
        LifeFactors = WearModelPair.FactorsByHabit(factors, LifetimeKind.Life);
        Spells = [.. holds.AllSpells(today)];
        UnitsById = lives.Units.ToDictionary(u => u.Id);
    }

    public HoldFacts Holds { get; }

    public LifeFacts Lives { get; }

    public LocalDate Today { get; }

    /// <summary>Bonds as they are known now, each at the place it has in its client's row.</summary>
    public IReadOnlyList<HoldSpell> Spells { get; }

    /// <summary>Units that were worn, as they are known now.</summary>
    public IReadOnlyList<LifeSpell> LifeSpells => field ??= [.. Lives.Spells(Kinds, Today)];

    public IReadOnlyDictionary<Guid, HairSystem> UnitsById { get; }

    public IReadOnlyDictionary<KnownCovariate, double> HoldFactors { get; }

    public IReadOnlyDictionary<KnownCovariate, double> LifeFactors { get; }

    /// <summary>Without the units that an alarm named.</summary>
    public required IReadOnlyDictionary<Guid, UnitKindTerms> Kinds { get; init; }

    public required PracticeSettings Settings { get; init; }

    public required IReadOnlyDictionary<Guid, Workshop> Workshops { get; init; }

    public required IReadOnlyList<Salon> Salons { get; init; }

    /// <summary>What clients had on their heads and in house, as days without hair are counted.</summary>
    public required IReadOnlyList<ClientHairHistory> Hair { get; init; }

    /// <summary>More clients take a night: then one in so many is looked at.</summary>
    public const int MostClients = 500;

    /// <summary>One client in so many is predicted again; what is learnt is learnt from all.</summary>
    public int OneIn => Math.Max(1, (Hair.Count + MostClients - 1) / MostClients);

    /// <summary>Those that are predicted again, evenly over when they came to the practice.</summary>
    public IReadOnlyList<ClientHairHistory> LookedAt => field ??= [.. Hair.OrderBy(c => c.Id).Where((_, place) => place % OneIn == 0)];

    /// <summary>A number for each of them.</summary>
    public IReadOnlyDictionary<Guid, int> NumbersLookedAt => field ??= LookedAt.Select((c, place) => (c.Id, place)).ToDictionary();

    /// <summary>Of the first bond; today where there is none.</summary>
    public LocalDate FirstDay => Spells.Select(s => s.AppliedOn).Append(Today).Min();

    /// <summary>As a job: of the whole practice.</summary>
    /// <param name="today">The last day that is over or under way in every salon.</param>
    public static async Task<PastRecords> LoadAsync(ClinicDb db, LocalDate today, CancellationToken cancellation)
    {
        var salons = await db.Salons.AsNoTracking().Include(s => s.Hours).Include(s => s.Closures).ToListAsync(cancellation);
        var windows = await db.HoldWindowRules.AsNoTracking().ToListAsync(cancellation);
        return new PastRecords(
            await HoldFacts.LoadAsync(db, windows, clientIds: null, cancellation, cohorts: []),
            await LifeFacts.LoadAsync(db, clientIds: null, cancellation, wholePast: true),
            await WearModelPair.LoadWearFactorsAsync(db, cancellation),
            today
        )
        {
            Kinds = (await LifeSpellBuilder.UnitKindsAsync(db, cancellation)).ToDictionary(k => k.Key, k => k.Value with { Cohorts = [] }),
            Settings = await db.PracticeSettings.AsNoTracking().SingleAsync(cancellation),
            Workshops = await db.Workshops.AsNoTracking().Include(w => w.Closures).ToDictionaryAsync(w => w.Id, cancellation),
            Salons = salons,
            Hair = await HairHistoryReader.ReadForSalonsAsync(db, [.. salons.Select(s => s.Id)], cancellation),
        };
    }
}
