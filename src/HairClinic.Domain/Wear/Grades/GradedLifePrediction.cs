using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Wear.Grades;

/// <summary>How much longer one unit will last, of known age and with what its take-downs saw: a distribution, never a single date.</summary>
public sealed class GradedLifePrediction
{
    // By whole days from today, until next to nothing is left.
    private readonly double[] _survival;

    // Some eight years: nothing here lasts so long.
    private const int FarthestDays = 3000;
    private const double NothingLeft = 1e-9;

    /// <param name="client">The client's δ + b.</param>
    /// <param name="place">The window of the unit's kind.</param>
    /// <param name="covariates">Its xᵀβ as it is from now on; 0 where none is known.</param>
    /// <param name="amongRows">The client's effect was learnt from rows that hold this unit's age and grades: they are not weighed again.</param>
    /// <param name="shifts">What such units' ln T may be moved by, each with its share, as of duds; none where they are all alike.</param>
    public GradedLifePrediction(
        PopulationParameters population,
        ClientEffectNodes client,
        RowLocationScale place,
        double covariates,
        GradedLifeByDay life,
        bool amongRows = false,
        params ReadOnlySpan<LifeShift> shifts
    )
    {
        if (shifts.IsEmpty)
            shifts = [new(0, 1)];
        var tau = place.Sigma * Math.Exp(population.LogScale);
        var mixture = new DayMixture(FarthestDays + 1);
        var parts = new double[shifts.Length][];
        foreach (ref var part in parts.AsSpan())
            part = new double[FarthestDays + 1];
        Span<double> logs = stackalloc double[shifts.Length];
        for (var k = 0; k < client.Nodes.Length; k++)
        {
            var centre = place.Offset + covariates + place.Loading * client.Nodes[k];
            var all = double.NegativeInfinity;
            for (var i = 0; i < shifts.Length; i++)
            {
                logs[i] = Math.Log(shifts[i].Share) + life.Fill(centre + shifts[i].LogDays, tau, parts[i]);
                if (!double.IsNegativeInfinity(logs[i]))
                    all = Math.Max(all, logs[i]) + Math.Log(1 + Math.Exp(-Math.Abs(all - logs[i])));
            }
            // Which of the shifts is this unit's its own age and grades tell in any case.
            for (var i = 0; i < shifts.Length; i++)
                mixture.Add(parts[i], Math.Log(client.Shares[k]) + logs[i] - (amongRows ? all : 0));
        }
        var (table, total) = (mixture.Sum, mixture.Total);
        var end = 1;
        while (end < table.Length - 1 && table[end] > NothingLeft * total)
            end++;
        _survival = table[..(end + 1)];
        for (var day = 0; day <= end; day++)
            _survival[day] /= total;
    }

    public double Median => Quantile(0.5);

    /// <summary>The 10 % and 90 % quantiles.</summary>
    public (double From, double To) Band => (Quantile(0.1), Quantile(0.9));

    /// <summary>The chance that it lasts so many days from now: 1 on day 0.</summary>
    public double Survival(double days)
    {
        if (!(days > 0))
            return 1;
        var whole = (int)Math.Min(days, _survival.Length);
        return whole >= _survival.Length - 1 ? 0 : _survival[whole] + (days - whole) * (_survival[whole + 1] - _survival[whole]);
    }

    /// <summary>The same on the days 0, 1, 2 and so on.</summary>
    public void SurvivalByDay(Span<double> survival)
    {
        var known = Math.Min(survival.Length, _survival.Length);
        _survival.AsSpan(0, known).CopyTo(survival);
        survival[known..].Clear();
    }

    /// <summary>The days from now by which a share has ended; no more than a calendar can be asked for.</summary>
    public double Quantile(double probability)
    {
        if (!(probability > 0 && probability < 1))
            throw new ArgumentOutOfRangeException(nameof(probability), "A quantile needs 0 < p < 1.");
        var day = 1;
        while (day < _survival.Length - 1 && _survival[day] > 1 - probability)
            day++;
        var (above, below) = (_survival[day - 1], _survival[day]);
        return below > 1 - probability ? FarthestDays : day - 1 + (above - (1 - probability)) / (above - below);
    }
}

/// <summary>Some units of a kind live shorter than the rest, or longer.</summary>
/// <param name="LogDays">Added to ln T.</param>
/// <param name="Share">Of the kind's units; all of them add up to 1.</param>
public readonly record struct LifeShift(double LogDays, double Share);

/// <summary>Curves by day added up by shares that are known as logarithms only.</summary>
internal sealed class DayMixture(int days)
{
    private double _top = double.NegativeInfinity;

    public double[] Sum { get; } = new double[days];

    /// <summary>Of the shares.</summary>
    public double Total { get; private set; }

    public void Add(double[] part, double logShare)
    {
        if (!(logShare > double.NegativeInfinity))
            return;
        // Against the greatest share so far, so that none of it is lost far out.
        if (logShare > _top)
        {
            var less = Math.Exp(_top - logShare);
            Total *= less;
            foreach (ref var chance in Sum.AsSpan())
                chance *= less;
            _top = logShare;
        }
        var share = Math.Exp(logShare - _top);
        Total += share;
        VectorSums.AddScaled(Sum, part, share);
    }
}
