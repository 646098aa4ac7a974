using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Spells with their covariates, laid out flat for the fit: one array a column, rows in the order they are read.</summary>
/// <remarks>
/// Rows that tell nothing (still going on at 0, or of no weight) are left out. Columns are kept less their mean where
/// every row takes on the whole intercept: the same model, and sums that lose no digits.
/// </remarks>
public sealed class LifeRows
{
    private LifeRows(int count, int covariates)
    {
        Count = count;
        Names = new string[covariates];
        Columns = new double[covariates][];
        Means = new double[covariates];
        (Ends, LogLower, LogUpper, Weights) = (new SpellEnd[count], new double[count], new double[count], new double[count]);
    }

    /// <summary>Rows that tell something.</summary>
    public int Count { get; }

    public string[] Names { get; }

    /// <summary>Rows whose end is known, or known to lie between two times or before one.</summary>
    public int Ended { get; private set; }

    internal double[][] Columns { get; }

    internal double[] Means { get; }

    internal SpellEnd[] Ends { get; }

    internal double[] LogLower { get; }

    internal double[] LogUpper { get; }

    internal double[] Weights { get; }

    /// <summary>Null where all rows are <see cref="RowPlace.Plain"/>.</summary>
    internal RowPlace[]? Places { get; private set; }

    /// <summary>The first rows, up to here, have a known end or go on; without clients only.</summary>
    internal int Simple { get; private set; }

    /// <summary>Where each client's rows begin, and the end of the last; empty without clients.</summary>
    internal int[] ClientStarts { get; private set; } = [];

    /// <param name="places">One a row; empty where all are <see cref="RowPlace.Plain"/>.</param>
    /// <param name="clients">
    /// Whose each row is; a negative number for a row whose client has no other. Empty where clients do not differ.
    /// </param>
    public static LifeRows Of(
        ReadOnlySpan<Spell> spells,
        IReadOnlyList<LifeColumn> columns,
        ReadOnlySpan<RowPlace> places = default,
        ReadOnlySpan<int> clients = default
    )
    {
        foreach (var column in columns)
        {
            if (column.Values.Length != spells.Length)
                throw new ArgumentException("A covariate has one value a row.", nameof(columns));
        }
        if ((!places.IsEmpty && places.Length != spells.Length) || (!clients.IsEmpty && clients.Length != spells.Length))
            throw new ArgumentException("Places and clients are given for every row or for none.", nameof(places));
        var order = Order(spells, clients);
        var rows = new LifeRows(order.Length, columns.Count);
        if (!places.IsEmpty)
            rows.Places = new RowPlace[order.Length];
        for (var i = 0; i < order.Length; i++)
        {
            var spell = spells[order[i]];
            rows.Ends[i] = spell.End;
            rows.LogLower[i] = spell.Lower > 0 ? Math.Log(spell.Lower) : double.NegativeInfinity;
            rows.LogUpper[i] = spell.End == SpellEnd.At ? rows.LogLower[i] : Math.Log(spell.Upper);
            rows.Weights[i] = spell.Weight;
            if (rows.Places is { } laid)
                laid[i] = places[order[i]];
            if (spell.End != SpellEnd.After)
                rows.Ended++;
            if (spell.End is SpellEnd.At or SpellEnd.After && rows.Simple == i)
                rows.Simple++;
        }
        for (var j = 0; j < columns.Count; j++)
            rows.Lay(j, columns[j], order);
        if (!clients.IsEmpty)
            rows.ClientStarts = Starts(order, clients);
        return rows;
    }

    /// <summary>A row's ln T as a start takes it: the middle of an interval, else the last that is known.</summary>
    internal double Middle(int row) =>
        Ends[row] switch
        {
            SpellEnd.By => LogUpper[row],
            SpellEnd.Between => (LogLower[row] + LogUpper[row]) / 2,
            _ => LogLower[row],
        };

    private void Lay(int j, LifeColumn column, int[] order)
    {
        Names[j] = column.Name;
        var values = new double[order.Length];
        var sum = 0.0;
        for (var i = 0; i < order.Length; i++)
            sum += values[i] = column.Values[order[i]];
        if (!double.IsFinite(sum))
            throw new ArgumentException($"The covariate {column.Name} has a value that is no number.", nameof(column));
        Columns[j] = values;
        if (Places is not null || order.Length == 0)
            return;
        Means[j] = sum / order.Length;
        for (var i = 0; i < values.Length; i++)
            values[i] -= Means[j];
    }

    private static int[] Order(ReadOnlySpan<Spell> spells, ReadOnlySpan<int> clients)
    {
        var kept = new List<int>(spells.Length);
        var later = new List<int>();
        for (var i = 0; i < spells.Length; i++)
        {
            if (spells[i].Weight == 0 || (spells[i].End == SpellEnd.After && spells[i].Lower == 0))
                continue;
            var simple = spells[i].End is SpellEnd.At or SpellEnd.After;
            (simple || !clients.IsEmpty ? kept : later).Add(i);
        }
        kept.AddRange(later);
        var order = kept.ToArray();
        if (clients.IsEmpty)
            return order;
        // By client, and within a client as they came.
        var keys = new (int Client, int Row)[order.Length];
        for (var i = 0; i < order.Length; i++)
            keys[i] = (clients[order[i]], order[i]);
        Array.Sort(keys, order);
        return order;
    }

    private static int[] Starts(int[] order, ReadOnlySpan<int> clients)
    {
        var starts = new List<int>();
        for (var i = 0; i < order.Length; i++)
        {
            if (i == 0 || clients[order[i]] < 0 || clients[order[i]] != clients[order[i - 1]])
                starts.Add(i);
        }
        starts.Add(order.Length);
        return [.. starts];
    }
}
