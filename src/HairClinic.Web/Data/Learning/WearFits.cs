using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Web.Data.Learning;

/// <summary>Fits hold or life to all spells of a practice.</summary>
public static class WearFits
{
    /// <returns>The fit, and how many different clients are in it.</returns>
    public static (LifetimeFit Fit, int Clients) Of(IReadOnlyCollection<WearSpell> all, IReadOnlyDictionary<WearHabit, double> factors)
    {
        var told = all.Where(s => s.Window is not null).ToList();
        var (columns, clients) = Laid(told, _ => true);
        var rows = LifeRows.Of([.. told.Select(s => s.Spell)], columns, [.. told.Select(s => s.Window!.Value.Place)], clients);
        var fit = LifetimeModel.Fit(LifeDistribution.Weibull, rows, PriorsOf(columns.Select(c => c.Name), factors));
        return (fit, clients.Append(-1).Max() + 1);
    }

    /// <summary>The covariates that are wanted, and a number for each spell's client.</summary>
    public static (List<LifeColumn> Columns, int[] Clients) Laid(IReadOnlyList<WearSpell> told, Func<string, bool> wanted)
    {
        var names = told.SelectMany(s => s.Columns).Select(c => c.Name).Distinct().Where(wanted).Order(StringComparer.Ordinal).ToList();
        var columns = names.Select(name => new LifeColumn(name, new double[told.Count])).ToList();
        var place = names.Select((name, i) => (name, i)).ToDictionary(n => n.name, n => n.i);
        var clients = new int[told.Count];
        var numbers = new Dictionary<Guid, int>();
        for (var i = 0; i < told.Count; i++)
        {
            // A unit of nobody's stands for itself.
            clients[i] = told[i].ClientId is { } client ? NumberOf(client) : -1;
            foreach (var column in told[i].Columns)
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

    /// <summary>Of a fit with these covariates: the practice's factor rows where there are some.</summary>
    public static LifePriors PriorsOf(IEnumerable<string> columns, IReadOnlyDictionary<WearHabit, double> factors) =>
        WindowPrior.Of(LifeDistribution.Weibull, 1, 2).Priors([.. columns.Select(name => PriorOf(name, factors))]);

    private static LifePrior PriorOf(string column, IReadOnlyDictionary<WearHabit, double> factors) =>
        WearColumn.HabitOf(column) is { } habit && factors.TryGetValue(habit, out var factor)
            ? LifePrior.OfFactor(factor)
            : LifePriors.UsualCoefficient;
}
