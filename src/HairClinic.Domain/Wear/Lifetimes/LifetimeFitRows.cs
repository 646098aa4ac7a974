using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Spells with their covariates, laid out flat for the fit: one array a column, rows in the order they are read.</summary>
/// <remarks>
/// Rows without information (still going on at 0, or of no weight) are left out. Columns are kept less their mean.
/// A spell entered late is two rows: it as a whole, and "went on until it entered" taken back, by a weight below 0, both at
/// its own covariates. All derivatives follow, and a client's effect sees both.
/// </remarks>
public sealed class LifetimeFitRows
{
    private LifetimeFitRows(int length, int covariates)
    {
        Length = length;
        Names = new string[covariates];
        Columns = new double[covariates][];
        Means = new double[covariates];
        (Ends, LogLower, LogUpper, Weights) = (new SpellEnd[length], new double[length], new double[length], new double[length]);
    }

    /// <summary>Spells with information; one whose covariates changed on the way counts once per stretch.</summary>
    public int Count { get; private set; }

    public string[] Names { get; }

    /// <summary>Those whose end is known, or known to lie between two times or before one.</summary>
    public int Ended { get; private set; }

    /// <summary>Rows as they are summed: the spells, and what is taken back of those entered late.</summary>
    internal int Length { get; }

    internal double[][] Columns { get; }

    /// <summary>What was taken off each column, per unit of loading.</summary>
    internal double[] Means { get; }

    /// <summary>A covariate whose values are so large, or so nearly alike, that their squares are no numbers; null if there is none.</summary>
    internal string? BeyondNumbers { get; private set; }

    private const double SmallestValue = 1e-100;
    private const double LargestValue = 1e100;

    internal SpellEnd[] Ends { get; private set; }

    internal double[] LogLower { get; private set; }

    internal double[] LogUpper { get; private set; }

    internal double[] Weights { get; }

    /// <summary>The chance that each row's unit is a dud; null where none may be.</summary>
    internal double[]? DudShares { get; private set; }

    internal DudDrop DudDrop { get; private set; } = DudDrop.Unlearnt;

    /// <summary>Null where all rows are <see cref="RowLocationScale.Plain"/>.</summary>
    internal RowLocationScale[]? Places { get; private set; }

    /// <summary>The first rows, up to here, have a known end or go on; without clients only.</summary>
    internal int Simple { get; private set; }

    /// <summary>Where each client's rows begin, and the end of the last; empty without clients.</summary>
    internal int[] ClientStarts { get; private set; } = [];

    /// <param name="places">One a row; empty where all are <see cref="RowLocationScale.Plain"/>.</param>
    /// <param name="clients">
    /// Whose each row is; a negative number for a row whose client has no other. Empty where clients do not differ.
    /// </param>
    /// <param name="entered">
    /// The time from which each spell was looked at, with the covariates it has here: known to have gone on until then, and
    /// nothing is concluded from that. 0, or empty for all, from the start.
    /// </param>
    /// <param name="dudShares">The chance that each row's unit is a dud (<see cref="UnitCourses"/>); empty where none may be. With clients only.</param>
    /// <param name="dudDrop">How much shorter a dud lasts; null for what is assumed.</param>
    public static LifetimeFitRows Create(
        ReadOnlySpan<Spell> spells,
        IReadOnlyList<CovariateColumn> columns,
        ReadOnlySpan<RowLocationScale> places = default,
        ReadOnlySpan<int> clients = default,
        ReadOnlySpan<double> entered = default,
        ReadOnlySpan<double> dudShares = default,
        DudDrop? dudDrop = null
    )
    {
        foreach (var column in columns)
        {
            if (column.Values.Length != spells.Length)
                throw new ArgumentException("A covariate has one value a row.", nameof(columns));
        }
        if ((!places.IsEmpty && places.Length != spells.Length) || (!clients.IsEmpty && clients.Length != spells.Length))
            throw new ArgumentException("Places and clients are given for every row or for none.", nameof(places));
        if (!dudShares.IsEmpty && (dudShares.Length != spells.Length || clients.IsEmpty))
            throw new ArgumentException("A share of duds is given for every row, and clients with it.", nameof(dudShares));
        for (var i = 0; i < entered.Length; i++)
        {
            if (entered.Length != spells.Length || !(entered[i] >= 0) || entered[i] > spells[i].Lower)
                throw new ArgumentException("A spell is entered before it ends or is last seen, one time a row.", nameof(entered));
        }
        var order = Order(spells, clients, entered);
        var rows = new LifetimeFitRows(order.Length, columns.Count);
        if (!places.IsEmpty)
            rows.Places = new RowLocationScale[order.Length];
        if (!dudShares.IsEmpty)
            (rows.DudShares, rows.DudDrop) = (new double[order.Length], dudDrop ?? DudDrop.Unlearnt);
        for (var i = 0; i < order.Length; i++)
        {
            var takenBack = order[i] < 0;
            order[i] = takenBack ? ~order[i] : order[i];
            var spell = takenBack ? Spell.RightCensored(entered[order[i]]) : spells[order[i]];
            rows.Ends[i] = spell.End;
            rows.LogLower[i] = spell.Lower > 0 ? Math.Log(spell.Lower) : double.NegativeInfinity;
            rows.LogUpper[i] = spell.End == SpellEnd.At ? rows.LogLower[i] : Math.Log(spell.Upper);
            rows.Weights[i] = takenBack ? -spells[order[i]].Weight : spell.Weight;
            rows.Count += takenBack ? 0 : 1;
            if (rows.Places is { } laid)
                laid[i] = places[order[i]];
            if (rows.DudShares is { } shares)
                shares[i] = dudShares[order[i]];
            if (spell.End != SpellEnd.After)
                rows.Ended++;
            if (spell.End is SpellEnd.At or SpellEnd.After && rows.Simple == i)
                rows.Simple++;
        }
        for (var j = 0; j < columns.Count; j++)
            rows.FillColumn(j, columns[j], order);
        if (!clients.IsEmpty)
            rows.ClientStarts = Starts(order, clients);
        return rows;
    }

    /// <summary>A row's ln T as a start takes it: the middle of an interval, else the last that is known.</summary>
    internal double LogMidpoint(int row) =>
        Ends[row] switch
        {
            SpellEnd.By => LogUpper[row],
            SpellEnd.Between => (LogLower[row] + LogUpper[row]) / 2,
            _ => LogLower[row],
        };

    /// <summary>The s at which noise about a known end is as wide as a day's rounding, on half of them; null where no end is known.</summary>
    internal double? LogScaleOfADay()
    {
        var perDay = new List<double>();
        for (var i = 0; i < Length; i++)
        {
            if (Ends[i] == SpellEnd.At)
                perDay.Add(-LogLower[i] - Math.Log(Places?[i].Sigma ?? 1));
        }
        if (perDay.Count == 0)
            return null;
        perDay.Sort();
        // Rounding to whole days spreads by 1/√12 of a day, the noise by 1.28 (Weibull) or 1 times its scale.
        return Math.Log(0.25) + perDay[perDay.Count / 2];
    }

    /// <summary>The same rows, every known end known to the day only: within half a day of what was written down.</summary>
    internal LifetimeFitRows KnownToTheDay()
    {
        var rounded = (LifetimeFitRows)MemberwiseClone();
        (rounded.Ends, rounded.LogLower, rounded.LogUpper) = ([.. Ends], [.. LogLower], [.. LogUpper]);
        rounded.Simple = 0;
        for (var i = 0; i < Length; i++)
        {
            if (Ends[i] != SpellEnd.At)
                continue;
            var day = Math.Exp(LogLower[i]);
            rounded.Ends[i] = day > 0.5 ? SpellEnd.Between : SpellEnd.By;
            rounded.LogLower[i] = day > 0.5 ? Math.Log(day - 0.5) : double.NegativeInfinity;
            rounded.LogUpper[i] = Math.Log(day + 0.5);
            // Not before it was entered: what is taken back of a spell stands beside it.
            if (i + 1 < Length && Weights[i + 1] < 0 && LogLower[i + 1] > rounded.LogLower[i])
                (rounded.Ends[i], rounded.LogLower[i]) = (SpellEnd.Between, LogLower[i + 1]);
        }
        return rounded;
    }

    // Less what a constant explains of it: the same model, and sums that lose no digits, however far from 0 a column lies.
    private void FillColumn(int j, CovariateColumn column, int[] order)
    {
        Names[j] = column.Name;
        var values = Columns[j] = new double[order.Length];
        if (order.Length == 0)
            return;
        var start = column.Values[order[0]] / Loading(0);
        var (product, square, largest) = (0.0, 0.0, 0.0);
        var constant = true;
        for (var i = 0; i < values.Length; i++)
        {
            var (value, loading) = (column.Values[order[i]], Loading(i));
            if (!double.IsFinite(value))
                throw new ArgumentException($"The covariate {column.Name} has a value that is no number.", nameof(column));
            values[i] = value - loading * start;
            // With several windows a constant times the loading is not always the same double.
            constant &= Math.Abs(values[i]) <= (Places is null ? 0 : 4e-16 * Math.Abs(value));
            product += loading * values[i];
            square += loading * loading;
        }
        var mean = product / square;
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = constant ? 0 : values[i] - Loading(i) * mean;
            largest = Math.Max(largest, Math.Abs(values[i]));
        }
        Means[j] = start + mean;
        if (!constant && !(largest is > SmallestValue and < LargestValue))
            BeyondNumbers ??= column.Name;
    }

    private double Loading(int row) => Places is { } places ? places[row].Loading : 1;

    // Which spell each row is of; the complement of it for what is taken back of one.
    private static int[] Order(ReadOnlySpan<Spell> spells, ReadOnlySpan<int> clients, ReadOnlySpan<double> entered)
    {
        var kept = new List<int>(spells.Length);
        var later = new List<int>();
        for (var i = 0; i < spells.Length; i++)
        {
            var from = entered.IsEmpty ? 0 : entered[i];
            if (spells[i].Weight == 0 || (spells[i].End == SpellEnd.After && spells[i].Lower == from))
                continue;
            var simple = spells[i].End is SpellEnd.At or SpellEnd.After;
            (simple || !clients.IsEmpty ? kept : later).Add(i);
            if (from > 0)
                kept.Add(~i);
        }
        kept.AddRange(later);
        var order = kept.ToArray();
        if (clients.IsEmpty)
            return order;
        // By client, and within a client as they came.
        var keys = new (int Client, int Row)[order.Length];
        for (var i = 0; i < order.Length; i++)
            keys[i] = (clients[Math.Max(order[i], ~order[i])], i);
        Array.Sort(keys, order);
        return order;
    }

    private static int[] Starts(int[] order, ReadOnlySpan<int> clients)
    {
        var starts = new List<int>();
        for (var i = 0; i < order.Length; i++)
        {
            // What is taken back of a spell stands beside it.
            if (i > 0 && order[i] == order[i - 1])
                continue;
            if (i == 0 || clients[order[i]] < 0 || clients[order[i]] != clients[order[i - 1]])
                starts.Add(i);
        }
        starts.Add(order.Length);
        return [.. starts];
    }
}

/// <summary>Where a row's ln T lies apart from what is fitted.</summary>
/// <param name="Offset">m: added to the centre.</param>
/// <param name="Sigma">σ: multiplied by eˢ.</param>
/// <param name="Loading">How much of δ and b the row takes on.</param>
public readonly record struct RowLocationScale(double Offset, double Sigma, double Loading)
{
    /// <summary>One window for all, of no account: plain maximum likelihood.</summary>
    public static readonly RowLocationScale Plain = new(0, 1, 1);
}

/// <summary>A covariate and its value on each row.</summary>
public sealed record CovariateColumn(string Name, double[] Values);
