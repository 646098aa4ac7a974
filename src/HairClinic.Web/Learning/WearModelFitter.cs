namespace HairClinic.Web.Learning;

/// <summary>Fits hold or life to all spells of a practice.</summary>
public static class WearModelFitter
{
    /// <param name="all">Those that count.</param>
    public static StoredFit FitHolds(
        IReadOnlyCollection<HoldSpell> all,
        IReadOnlyDictionary<KnownCovariate, double> factors,
        LocalDate dataCut,
        Instant at
    )
    {
        var usable = all.Where(s => s.Window is not null).ToList();
        var (columns, clients) = DesignMatrix(usable, HoldFacts.ColumnsThatTell(usable));
        var rows = LifetimeFitRows.Create(
            [.. usable.Select(s => s.Spell)],
            columns,
            [.. usable.Select(s => s.Window!.Value.Place)],
            clients
        );
        var fit = LifetimeFitter.Fit(LifeDistribution.Weibull, rows, PriorsOf(columns.Select(c => c.Name), factors));
        return new StoredFit(Guid.CreateVersion7(), LifetimeKind.Hold, fit, clients.Append(-1).Max() + 1, dataCut, at);
    }

    /// <param name="all">Those that count.</param>
    public static StoredFit FitLives(
        IReadOnlyCollection<LifeSpell> all,
        IReadOnlyDictionary<KnownCovariate, double> factors,
        LocalDate dataCut,
        Instant at
    )
    {
        var rows = LifeRows(all, factors);
        var fit = UnitLifeFitter.Fit(
            LifeDistribution.Weibull,
            rows.Units,
            rows.Columns,
            rows.Priors,
            WearModel.RepairRateFrom(factors),
            rows.Alike
        );
        return new StoredFit(Guid.CreateVersion7(), fit, rows.Clients, dataCut, at);
    }

    /// <summary>The same lives as a fit of them, with duds as they were assumed before any was seen: what the watch goes by.</summary>
    /// <remarks>
    /// What is learnt of duds is learnt from the watched units too: a workshop whose units all come to last half as long would be one of many
    /// duds, and no decline.
    /// </remarks>
    public static LifetimeFit FitLivesForWatch(
        StoredFit fit,
        IReadOnlyCollection<LifeSpell> all,
        IReadOnlyDictionary<KnownCovariate, double> factors
    )
    {
        var rows = LifeRows(all, factors);
        return UnitLifeFitter.FitWithAssumedDuds(
            LifeDistribution.Weibull,
            rows.Units,
            rows.Columns,
            rows.Priors,
            fit.RepairRate,
            fit.EffectSpread,
            rows.Alike
        );
    }

    private static (List<UnitLifeRow> Units, List<CovariateColumn> Columns, LifePriors Priors, int[] Alike, int Clients) LifeRows(
        IReadOnlyCollection<LifeSpell> all,
        IReadOnlyDictionary<KnownCovariate, double> factors
    )
    {
        var usable = all.Where(s => s.Window is not null).ToList();
        var (columns, clients) = DesignMatrix(usable, _ => true);
        return (
            [.. usable.Select((s, i) => new UnitLifeRow(s.Spell, s.RepairedAt, s.UnitKindId, s.Window!.Value.Place, clients[i]))],
            columns,
            PriorsOf(columns.Select(c => c.Name), factors),
            [.. columns.Index().Where(c => CovariateValue.IsBaseOrWorkshop(c.Item.Name)).Select(c => c.Index)],
            clients.Append(-1).Max() + 1
        );
    }

    /// <summary>Of a fit with these covariates: the practice's factor rows where there are some.</summary>
    public static LifePriors PriorsOf(IEnumerable<string> columns, IReadOnlyDictionary<KnownCovariate, double> factors) =>
        WindowPrior.ForAnyWindow(LifeDistribution.Weibull).ToLifePriors([.. columns.Select(name => CovariateValue.PriorOf(name, factors))]);

    /// <summary>The covariates that are wanted, and a number for each spell's client.</summary>
    public static (List<CovariateColumn> Columns, int[] Clients) DesignMatrix(IReadOnlyList<WearSpell> rows, Func<string, bool> wanted)
    {
        var names = rows.SelectMany(r => r.Columns).Select(c => c.Name).Distinct().Where(wanted).Order(StringComparer.Ordinal).ToList();
        var columns = names.Select(name => new CovariateColumn(name, new double[rows.Count])).ToList();
        var place = names.Select((name, i) => (name, i)).ToDictionary(n => n.name, n => n.i);
        var clients = new int[rows.Count];
        var numbers = new Dictionary<Guid, int>();
        for (var i = 0; i < rows.Count; i++)
        {
            // A unit of nobody's stands for itself.
            clients[i] = rows[i].ClientId is { } client ? NumberOf(client) : -1;
            foreach (var column in rows[i].Columns)
            {
                if (place.TryGetValue(column.Name, out var at))
                    columns[at].Values[i] += column.Value;
            }
        }
        return (columns, clients);

        int NumberOf(Guid client)
        {
            if (!numbers.TryGetValue(client, out var number))
                numbers[client] = number = numbers.Count;
            return number;
        }
    }
}
