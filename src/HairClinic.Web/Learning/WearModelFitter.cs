namespace HairClinic.Web.Learning;

/// <summary>Fits hold or life to all spells of a practice.</summary>
public static class WearModelFitter
{
    /// <returns>The fit, and how many different clients are in it.</returns>
    public static (LifetimeFit Fit, int Clients) Fit(
        IReadOnlyCollection<WearSpell> all,
        IReadOnlyDictionary<KnownCovariate, double> factors
    )
    {
        var usable = all.Where(s => s.Window is not null).SelectMany(s => s.Rows.Select(row => (Row: row, Spell: s))).ToList();
        var (columns, clients) = DesignMatrix([.. usable.Select(t => (t.Spell.ClientId, t.Row.Columns))], _ => true);
        var rows = LifetimeFitRows.Create(
            [.. usable.Select(t => t.Row.Spell)],
            columns,
            [.. usable.Select(t => t.Spell.Window!.Value.Place)],
            clients,
            usable.Exists(t => t.Row.Entered > 0) ? [.. usable.Select(t => t.Row.Entered)] : []
        );
        var fit = LifetimeFitter.Fit(LifeDistribution.Weibull, rows, PriorsOf(columns.Select(c => c.Name), factors));
        return (fit, clients.Append(-1).Max() + 1);
    }

    /// <summary>The covariates that are wanted, and a number for each spell's client; a repair counts for nothing here.</summary>
    public static (List<CovariateColumn> Columns, int[] Clients) DesignMatrix(IReadOnlyList<WearSpell> usable, Func<string, bool> wanted) =>
        DesignMatrix([.. usable.Select(s => (s.ClientId, s.Columns))], wanted);

    /// <summary>Of a fit with these covariates: the practice's factor rows where there are some.</summary>
    public static LifePriors PriorsOf(IEnumerable<string> columns, IReadOnlyDictionary<KnownCovariate, double> factors) =>
        WindowPrior.ForAnyWindow(LifeDistribution.Weibull).ToLifePriors([.. columns.Select(name => PriorOf(name, factors))]);

    private static (List<CovariateColumn> Columns, int[] Clients) DesignMatrix(
        IReadOnlyList<(Guid? Client, IReadOnlyList<CovariateValue> Columns)> rows,
        Func<string, bool> wanted
    )
    {
        var names = rows.SelectMany(r => r.Columns).Select(c => c.Name).Distinct().Where(wanted).Order(StringComparer.Ordinal).ToList();
        var columns = names.Select(name => new CovariateColumn(name, new double[rows.Count])).ToList();
        var place = names.Select((name, i) => (name, i)).ToDictionary(n => n.name, n => n.i);
        var clients = new int[rows.Count];
        var numbers = new Dictionary<Guid, int>();
        for (var i = 0; i < rows.Count; i++)
        {
            // A unit of nobody's stands for itself.
            clients[i] = rows[i].Client is { } client ? NumberOf(client) : -1;
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

    private static NormalPrior PriorOf(string column, IReadOnlyDictionary<KnownCovariate, double> factors) =>
        CovariateValue.ParseHabit(column) is { } habit && factors.TryGetValue(habit, out var factor)
            ? NormalPrior.OfFactor(factor)
            : LifePriors.UsualCoefficient;
}
