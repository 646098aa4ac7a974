using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Replacement;

/// <summary>How long hair lasts in all, for one value of the client's effect: lives convolved on a daily grid.</summary>
internal sealed class TotalHairLife(int length)
{
    private readonly DayProbabilities _life = new(length);
    private DayProbabilities _sum = new(length);
    private DayProbabilities _next = new(length);
    private readonly double[] _ready = new double[length];

    public void AddCumulativeTo(ReorderInput question, double place, double share, int extra, RemainingLife each, Span<double> table)
    {
        // One unit alone needs no sum, and is exact on every day.
        if (question.InHand.Count == 1 && question.InFlight.Count == 0 && extra == 0)
        {
            Life(question, question.InHand[0], place).AddCumulativeTo(table, share);
            return;
        }
        SetInHand(question, place);
        foreach (var unit in question.InFlight)
            Add(Life(question, unit.Life, place));
        for (var i = 0; i < extra; i++)
            Add(Life(question, each, place));
        _sum.AddCumulativeTo(table, share);
    }

    /// <summary>The chance that hair never runs out before the k-th order in flight is ready.</summary>
    public double ChanceLastsUntilOrderReady(ReorderInput question, double place, int k)
    {
        SetInHand(question, place);
        var kept = 1.0;
        for (var j = 0; j < k; j++)
        {
            var unit = question.InFlight[j];
            // Hair that outlasts the horizon falls on no day.
            var beyond = Math.Max(0, kept - _sum.Total);
            SetReady(unit, question);
            for (var day = _sum.First; day < _sum.End; day++)
                _sum.Mass[day] *= _ready[day];
            kept = _sum.Total + beyond * _ready[^1];
            if (j < k - 1)
                Add(Life(question, unit.Life, place));
        }
        return kept;
    }

    private static RemainingLifeByDay Life(ReorderInput question, RemainingLife unit, double place) =>
        new(question.Distribution, unit.Centre + unit.Loading * place, unit.Tau, unit.WornDays);

    private void SetInHand(ReorderInput question, double place)
    {
        if (question.InHand.Count == 0)
            _sum.SetAllOnToday();
        for (var i = 0; i < question.InHand.Count; i++)
        {
            if (i == 0)
                Life(question, question.InHand[0], place).WriteProbabilitiesTo(_sum);
            else
                Add(Life(question, question.InHand[i], place));
        }
    }

    private void Add(RemainingLifeByDay other)
    {
        other.WriteProbabilitiesTo(_life);
        _next.SetConvolution(_sum, _life);
        (_sum, _next) = (_next, _sum);
    }

    // The chance that a unit is ready by each day; half of what is put on a day counts on it.
    private void SetReady(UnitOnOrder unit, ReorderInput question)
    {
        Array.Clear(_ready);
        for (var working = 0; working < unit.Lead.Mass.Length; working++)
        {
            var day = (long)unit.Workshop.CalendarDayAfter(working) + (question.Preparation is null ? question.PreparationDays : 0);
            if (day >= _ready.Length)
                continue;
            if (question.Preparation is not { } learnt)
                _ready[day] += unit.Lead.Mass[working];
            else
            {
                var rest = _ready.AsSpan((int)day);
                var seen = Math.Min(rest.Length, learnt.MassByDay.Length);
                VectorSums.AddScaled(rest[..seen], learnt.MassByDay[..seen], unit.Lead.Mass[working]);
            }
        }
        var before = 0.0;
        for (var day = 0; day < _ready.Length; day++)
            (_ready[day], before) = (before + _ready[day] / 2, before + _ready[day]);
    }
}
