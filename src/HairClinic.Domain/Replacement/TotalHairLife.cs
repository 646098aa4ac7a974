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
            AddCumulative(question, question.InHand[0], place, share, table);
            return;
        }
        SetInHand(question, place);
        foreach (var unit in question.InFlight)
            Add(question, unit.Life, place);
        for (var i = 0; i < extra; i++)
            Add(question, each, place);
        _sum.AddCumulativeTo(table, share);
    }

    /// <summary>How likely the grades of the units in house are for one value of the client's effect.</summary>
    public double GradeLikelihood(ReorderInput question, double place)
    {
        var likelihood = 1.0;
        foreach (var unit in question.InHand)
        {
            if (unit.Grades is not null)
                likelihood *= Write(question, unit, place, _life);
        }
        return likelihood;
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
                Add(question, unit.Life, place);
        }
        return kept;
    }

    private void AddCumulative(ReorderInput question, RemainingLife unit, double place, double share, Span<double> table)
    {
        var centre = unit.Centre + unit.Loading * place;
        if (unit.Grades is not null)
        {
            Write(question, unit, place, _life);
            _life.AddCumulativeTo(table, share);
        }
        else if (unit.Shape is { } shape)
            new ShapedLifeByDay(shape, centre, unit.WornDays, unit.Clock).AddCumulativeTo(table, share);
        else
            new RemainingLifeByDay(question.Distribution, centre, unit.Tau, unit.WornDays).AddCumulativeTo(table, share);
    }

    private static double Write(ReorderInput question, RemainingLife unit, double place, DayProbabilities onto)
    {
        var centre = unit.Centre + unit.Loading * place;
        if (unit.Shape is { } shape)
            new ShapedLifeByDay(shape, centre, unit.WornDays, unit.Clock).WriteProbabilitiesTo(onto);
        else
            new RemainingLifeByDay(question.Distribution, centre, unit.Tau, unit.WornDays).WriteProbabilitiesTo(onto);
        return unit.Grades is { } grades ? onto.Weigh(grades) : 1;
    }

    private void SetInHand(ReorderInput question, double place)
    {
        if (question.InHand.Count == 0)
            _sum.SetAllOnToday();
        for (var i = 0; i < question.InHand.Count; i++)
        {
            if (i == 0)
                Write(question, question.InHand[0], place, _sum);
            else
                Add(question, question.InHand[i], place);
        }
    }

    private void Add(ReorderInput question, RemainingLife unit, double place)
    {
        Write(question, unit, place, _life);
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
