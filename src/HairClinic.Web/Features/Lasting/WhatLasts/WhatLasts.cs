using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Lasting;

/// <summary>How long bonds hold and units last by what they are made of, from the records of whoever asks may see.</summary>
public sealed class WhatLasts(ClinicDbFactory databases, CurrentActor current, IClock clock) : INightlyPage
{
    public async Task<Screen> OpenAsync(LastingQuery question, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        // Held open, the connection is told once who is acting.
        await db.Database.OpenConnectionAsync(cancellation);
        return await PageResultStore.GetOrComputeAsync(
            db,
            current.Person,
            KeyOf(question),
            async () => await AnswerAsync(db, question, await RecordsAsync(db, question.Of, cancellation), cancellation),
            cancellation
        );
    }

    public async Task PrecomputeAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var records = await RecordsAsync(db, only: null, cancellation);
        foreach (var question in LastingQuery.All)
        {
            var answer = await AnswerAsync(db, question, records, cancellation);
            await PageResultStore.StoreAsync(db, current.Person, KeyOf(question), answer, cancellation);
        }
    }

    private static string KeyOf(LastingQuery question) => "what-lasts?" + question.Query;

    /// <summary>Every bond and unit the reader may see as spells up to a day, for whatever is asked.</summary>
    private sealed record Records(LocalDate Today, List<HoldSpell> Holds, List<LifeSpell> Lives);

    /// <param name="only">Null for whatever is asked.</param>
    private async Task<Records> RecordsAsync(ClinicDb db, LastingSubject? only, CancellationToken cancellation)
    {
        var today = clock.Today(await ReaderZone.ReadAsync(db, current.Person, cancellation));
        return new(
            today,
            only == LastingSubject.Life ? [] : [.. await HoldsAsync()],
            only == LastingSubject.Hold ? [] : await LifeSpellBuilder.LoadAsync(db, today, clientIds: null, cancellation)
        );

        async Task<IEnumerable<HoldSpell>> HoldsAsync()
        {
            var windows = await db.HoldWindowRules.AsNoTracking().ToListAsync(cancellation);
            return (await HoldFacts.LoadAsync(db, windows, clientIds: null, cancellation)).AllSpells(today);
        }
    }

    private static async Task<Screen> AnswerAsync(ClinicDb db, LastingQuery question, Records records, CancellationToken cancellation)
    {
        var (today, holds, lives) = records;
        var fit = await FitAsync(db, question, cancellation);
        if (question.Of == LastingSubject.Cost)
        {
            var models = await WearModelPair.LoadAsync(db, cancellation);
            var costs = await new WearCostReader(db, question.By, cancellation).ReadAsync(models, lives, holds);
            return new Screen(question, today, [], [], null, fit, costs) { Bases = models.Bases };
        }
        var spells =
            question.Of == LastingSubject.Hold
                ? await HoldsByAsync(db, question.By, holds, cancellation)
                : lives.ToLookup(l => KeyOf(l, question.By), WearSpell (l) => l);
        var names = await LastingNames.LoadAsync(db, question.By, cancellation);
        var days = LastingGroup.RiskTableDaysUpTo(spells.SelectMany(s => s).Select(s => LastSeen(s.Spell)).DefaultIfEmpty().Max());
        var groups = spells
            .Select(own => (own.Key, Told: own.Select(s => s.Spell).Where(Tells).ToList()))
            .Where(g => g.Told.Count > 0)
            .Select(g => LastingGroup.FromSpells(g.Key, g.Key is { } id ? names.GetValueOrDefault(id) : null, g.Told, days))
            .OrderBy(g => g.Id is null)
            .ThenByDescending(g => g.Spells)
            .ToList();
        var factors = WearModelPair.FactorsByHabit(await WearModelPair.LoadWearFactorsAsync(db, cancellation), question.Quantity);
        var compared = GroupComparison.Compare(groups, spells, Determined(question.By), factors);
        return new Screen(question, today, groups, days, compared, fit, []);
    }

    private static async Task<LifetimeFitSummary> FitAsync(ClinicDb db, LastingQuery question, CancellationToken cancellation)
    {
        var newest = await db
            .StoredFits.AsNoTracking()
            .Where(f => f.Quantity == question.Quantity && f.ModelVersion == StoredFit.CurrentModel)
            .OrderByDescending(f => f.FittedAt)
            .FirstOrDefaultAsync(cancellation);
        if (newest is null)
            return LifetimeFitSummary.None;
        var estimated = newest.Converged ? newest : await WearModelPair.UsableFits(db, question.Quantity).FirstOrDefaultAsync(cancellation);
        return LifetimeFitSummary.Of(newest, estimated, await LastingNames.LoadCovariateNamesAsync(db, cancellation), Shown(question));
    }

    private static async Task<ILookup<Guid?, WearSpell>> HoldsByAsync(
        ClinicDb db,
        LastingSide by,
        List<HoldSpell> holds,
        CancellationToken cancellation
    )
    {
        var homes =
            by == LastingSide.Salon
                ? await db.Clients.Select(c => new { c.Id, c.HomeSalonId }).ToDictionaryAsync(c => c.Id, c => c.HomeSalonId, cancellation)
                : [];
        return holds.ToLookup(
            h =>
                by switch
                {
                    LastingSide.Base => h.BaseMaterialId,
                    LastingSide.Lot => h.LotId,
                    LastingSide.Salon => h.Client is { } id && homes.TryGetValue(id, out var home) ? home : null,
                    _ => h.AdhesiveId,
                },
            WearSpell (h) => h
        );
    }

    private static Guid? KeyOf(LifeSpell life, LastingSide by) =>
        by switch
        {
            LastingSide.Base => life.BaseMaterialId,
            LastingSide.Kind => life.UnitKindId,
            _ => life.WorkshopId,
        };

    // A bond made today has told nothing yet.
    private static bool Tells(Spell spell) => spell is not { Lower: 0, Upper: double.PositiveInfinity };

    private static double LastSeen(Spell spell) => double.IsFinite(spell.Upper) ? spell.Upper : spell.Lower;

    private static string[] Determined(LastingSide by) =>
        by switch
        {
            LastingSide.Workshop => [CovariateValue.WorkshopPrefix],
            LastingSide.Base => [CovariateValue.BasePrefix],
            LastingSide.Kind => [CovariateValue.BasePrefix, CovariateValue.WorkshopPrefix],
            LastingSide.Adhesive or LastingSide.Lot => [CovariateValue.AdhesivePrefix],
            _ => [],
        };

    private static string[] Shown(LastingQuery question) =>
        question.By == LastingSide.Base ? [CovariateValue.BasePrefix]
        : question.Of == LastingSubject.Hold ? [CovariateValue.AdhesivePrefix]
        : question.By == LastingSide.Workshop ? [CovariateValue.WorkshopPrefix]
        : [CovariateValue.WorkshopPrefix, CovariateValue.BasePrefix];

    /// <param name="Days">At which it is told how many were still watched.</param>
    /// <param name="Compared">Null where nothing is compared.</param>
    public sealed record Screen(
        LastingQuery Question,
        LocalDate Today,
        IReadOnlyList<LastingGroup> Groups,
        IReadOnlyList<double> Days,
        GroupComparison? Compared,
        LifetimeFitSummary Fit,
        IReadOnlyList<WearCostRow> Costs
    )
    {
        /// <summary>What costs stand on, where the newest recalculation found no answer.</summary>
        public IReadOnlyList<ModelBasis> Bases { get; init; } = [];
    }
}
