using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Web.Data.Learning;

/// <summary>Fits hold or life to all spells of a practice.</summary>
public static class WearFits
{
    /// <returns>The fit, and how many different clients are in it.</returns>
    public static (LifetimeFit Fit, int Clients) Of(IReadOnlyCollection<WearSpell> all, IReadOnlyDictionary<WearHabit, double> factors)
    {
        var told = all.Where(s => s.Window is not null).SelectMany(s => s.Rows.Select(row => (Row: row, Spell: s))).ToList();
        var names = told.SelectMany(t => t.Row.Columns).Select(c => c.Name).Distinct().Order(StringComparer.Ordinal).ToList();
        var columns = names.Select(name => new LifeColumn(name, new double[told.Count])).ToList();
        var place = names.Select((name, i) => (name, i)).ToDictionary(n => n.name, n => n.i);
        var (spells, places, clients) = (new Spell[told.Count], new RowPlace[told.Count], new int[told.Count]);
        var entered = new double[told.Count];
        var numbers = new Dictionary<Guid, int>();
        for (var i = 0; i < told.Count; i++)
        {
            var (row, spell) = told[i];
            (spells[i], entered[i], places[i]) = (row.Spell, row.Entered, spell.Window!.Value.Place);
            // A unit of nobody's stands for itself.
            clients[i] = spell.ClientId is { } client ? NumberOf(client) : -1;
            foreach (var column in row.Columns)
                columns[place[column.Name]].Values[i] += column.Value;
        }
        var priors = WindowPrior.Of(LifeDistribution.Weibull, 1, 2).Priors([.. names.Select(name => PriorOf(name, factors))]);
        var late = Array.Exists(entered, e => e > 0) ? entered : [];
        return (LifetimeModel.Fit(LifeDistribution.Weibull, LifeRows.Of(spells, columns, places, clients, late), priors), numbers.Count);

        int NumberOf(Guid client)
        {
            if (!numbers.TryGetValue(client, out var number))
                numbers[client] = number = numbers.Count;
            return number;
        }
    }

    private static LifePrior PriorOf(string column, IReadOnlyDictionary<WearHabit, double> factors) =>
        WearColumn.HabitOf(column) is { } habit && factors.TryGetValue(habit, out var factor)
            ? LifePrior.OfFactor(factor)
            : LifePriors.UsualCoefficient;
}
