using HairClinic.Benchmarks.Calibration;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>What is counted of one practice from day 0 on.</summary>
internal sealed class Measures
{
    public static readonly string[] Bands = ["hold", "new unit", "remaining"];

    /// <summary>Upper ends of the bins of P(gap).</summary>
    public static readonly double[] Bins = [0.01, 0.025, 0.05, 0.1, 0.2, 0.4, 0.7, 1];

    /// <summary>From here on a spare that was ordered on day 0 has come: before, a rule about spares changes nothing.</summary>
    public const int FirstSpares = 120;

    private const double DaysInYear = 365;

    public Tally Tally { get; } = new();

    /// <summary>Days on which a unit of the workshop that got worse left somebody without hair.</summary>
    public List<int> GapsOfDecline { get; } = [];

    /// <summary>A unit was worn out on that day, though nobody saw it yet.</summary>
    /// <param name="gap">Nothing else was ready that day.</param>
    public void WornOut(ClientBook client, int day, bool gap, UnitTruth unit)
    {
        if (day < 0)
            return;
        Tally.Count("gap", gap);
        Tally.Count($"gap {Year(day)}", gap);
        if (day >= FirstSpares)
            Tally.Count("gap settled", gap);
        Tally.Count($"gap {PracticeRows.Bases[client.Base]}", gap);
        if (gap && unit.IsOfDecline)
            GapsOfDecline.Add(day);
        Tally.Count(gap ? "warned of gap" : "warned falsely", unit.Record.WarnedOn is not null);
    }

    /// <summary>It was found so at a take-down.</summary>
    /// <param name="bare">Nothing else was ready: the head stays bare.</param>
    public void Found(int day, bool bare)
    {
        if (day >= 0)
            Tally.Count("found", bare);
    }

    /// <summary>A bond came off.</summary>
    public void Bond(int day, bool lifted)
    {
        if (day < 0)
            return;
        Tally.Count("early", lifted);
        Tally.Add("rebonds", 1, over: 0);
    }

    /// <summary>One client's day.</summary>
    /// <param name="without">Every unit in house is worn out.</param>
    public void Day(bool without, bool bare, int idle, int onOrder)
    {
        Tally.Add("without", without ? 1 : 0, over: 1 / DaysInYear);
        Tally.Add("bare", bare ? 1 : 0, over: 1 / DaysInYear);
        Tally.Add("rebonds", 0, over: 1 / DaysInYear);
        Tally.Add("idle", idle);
        Tally.Add("on order", onOrder);
    }

    /// <summary>A band that was said, and what came.</summary>
    /// <param name="age">Lasted already.</param>
    /// <param name="usual">In the middle of the window: losses are told in per cent of it.</param>
    public void Band(string kind, int day, LifePrediction said, double age, double came, double usual)
    {
        if (day < 0)
            return;
        var (from, to) = (said.RemainingQuantile(age, 0.1), said.RemainingQuantile(age, 0.9));
        var line = $"{kind} {Year(day)}";
        Tally.Count($"{line} inside", came >= from && came <= to);
        Tally.Count($"{line} below", came < from);
        Tally.Count($"{line} above", came > to);
        Tally.Add($"{line} loss", (Pinball(0.1, came - from) + Pinball(0.9, came - to)) / 2 / usual);
    }

    /// <summary>P(gap) as it was said of an order that was not placed, and how often such orders truly came too late.</summary>
    public void Chance(int day, double said, double came)
    {
        var bin = Array.FindIndex(Bins, end => said < end || end == 1);
        foreach (var line in new[] { $"{bin}", $"{bin} in {Year(day)}" })
        {
            Tally.Add($"said {line}", said);
            Tally.Add($"came {line}", came);
            Tally.Add($"came less said {line}", came - said);
        }
    }

    private static int Year(int day) => 1 + day / (int)DaysInYear;

    private static double Pinball(double chance, double over) => over >= 0 ? chance * over : (chance - 1) * over;
}
