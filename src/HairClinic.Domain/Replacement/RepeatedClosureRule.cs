using HairClinic.Domain.Wear;

namespace HairClinic.Domain.Replacement;

/// <summary>
/// A stretch of the calendar in which a workshop seems to send nothing, about the same days every year: read from when its orders
/// went out and came, and proposed to be entered as closed.
/// </summary>
/// <remarks>
/// Every stretch of one to six weeks is weighed by a Bayes factor: how likely the arrivals are if no day of it were worked, against how
/// likely they are if every day were. Both count lead times as <see cref="LeadTime"/> does, their mean and variance integrated out; an
/// order that came on a closed day after all has one chance in fifty. So a gap in the arrivals and orders that took longer over it
/// both speak, and neither alone is enough. The best stretch is proposed where the factor is beyond fifty times the number of stretches, and
/// at least two years speak for it and none against: by Ville's inequality a workshop that never closes is then asked about at most once
/// in fifty, however often it is looked at.
/// </remarks>
public static class RepeatedClosureRule
{
    /// <summary>Fewer orders say nothing.</summary>
    public const int LeastOrders = 20;

    private const int ShortestDays = 7;
    private const int LongestDays = 42;

    // Of the logarithm of the factor.
    private static readonly double Least = Math.Log(50.0 * 365 * (LongestDays - ShortestDays + 1));

    // What a year must add to speak for it.
    private const double LeastOfYear = 1.5;
    private const double CameWhileClosed = 0.02;

    /// <param name="orders">One for each parcel: what came together says one thing.</param>
    /// <param name="known">Closures that are entered.</param>
    /// <param name="through">The last day that was seen.</param>
    /// <returns>Null where nothing of the kind is to be seen, or less than two years were.</returns>
    public static RepeatedClosure? Find(IReadOnlyList<OrderSpan> orders, IEnumerable<DateInterval> known, LocalDate through)
    {
        if (orders.Count(o => o.ArrivedOn <= through) < LeastOrders || through < orders.Min(o => o.OrderedOn).PlusYears(2))
            return null;
        var calendar = new Calendar([.. orders.Where(o => o.ArrivedOn <= through)], [.. known], through);
        RepeatedClosure? best = null;
        var most = Least;
        for (var start = 0; start < 365; start++)
        {
            for (var length = ShortestDays; length <= LongestDays; length++)
            {
                var factor = calendar.LogBayesFactor(start, length, without: null);
                if (factor > most && calendar.EveryYearAgrees(start, length, factor, LeastOfYear))
                    (most, best) = (factor, calendar.Closure(start, length, factor));
            }
        }
        return best;
    }

    /// <summary>The days of the orders, numbered, with what is known to be closed.</summary>
    private sealed class Calendar
    {
        private readonly int _first;
        private readonly int _last;
        private readonly int[] _ordered;
        private readonly int[] _arrived;
        private readonly int[] _kind;
        private readonly LeadTimePrior[] _priors;
        private readonly bool[] _known;
        private readonly double _plain;
        private readonly LocalDate _firstDay;
        private readonly int[] _closedBefore;
        private readonly int[] _arrivalsBefore;
        private readonly double[] _count;
        private readonly double[] _sum;
        private readonly double[] _squares;

        public Calendar(IReadOnlyList<OrderSpan> orders, IReadOnlyList<DateInterval> known, LocalDate through)
        {
            _firstDay = orders.Min(o => o.OrderedOn);
            (_first, _last) = (CivilDayNumber.Number(_firstDay), CivilDayNumber.Number(through));
            var kinds = orders.Select(o => o.Kind).Distinct().ToList();
            _priors = [.. kinds.Select(k => orders.First(o => o.Kind == k).Prior)];
            _ordered = [.. orders.Select(o => CivilDayNumber.Number(o.OrderedOn) - _first)];
            _arrived = [.. orders.Select(o => CivilDayNumber.Number(o.ArrivedOn) - _first)];
            _kind = [.. orders.Select(o => kinds.IndexOf(o.Kind))];
            (_count, _sum, _squares) = (new double[kinds.Count], new double[kinds.Count], new double[kinds.Count]);
            _closedBefore = new int[_last - _first + 2];
            _known = new bool[_last - _first + 1];
            foreach (var closure in known)
            {
                var to = Math.Min(_last, CivilDayNumber.Number(closure.End)) - _first;
                for (var day = Math.Max(0, CivilDayNumber.Number(closure.Start) - _first); day <= to; day++)
                    _known[day] = true;
            }
            _arrivalsBefore = new int[_last - _first + 2];
            foreach (var day in _arrived)
                _arrivalsBefore[day + 1]++;
            for (var day = 1; day < _arrivalsBefore.Length; day++)
                _arrivalsBefore[day] += _arrivalsBefore[day - 1];
            _plain = LogLikelihood([]);
        }

        public RepeatedClosure Closure(int start, int length, double factor)
        {
            var from = _firstDay.PlusDays(Occurrences(start, length)[^1].From);
            return new RepeatedClosure(from, from.PlusDays(length - 1), Occurrences(start, length).Count, factor);
        }

        /// <param name="without">The year that is taken to have been worked through; null for none.</param>
        public double LogBayesFactor(int start, int length, int? without)
        {
            var closed = Occurrences(start, length);
            if (without is { } year)
                closed.RemoveAt(year);
            var came = closed.Sum(c => _arrivalsBefore[c.To + 1] - _arrivalsBefore[c.From]);
            // Where many came nobody would believe it, and nothing needs to be summed.
            return came > 1 + _arrived.Length / 200
                ? double.NegativeInfinity
                : LogLikelihood(closed) - _plain + came * Math.Log(CameWhileClosed);
        }

        public bool EveryYearAgrees(int start, int length, double all, double least)
        {
            var added = Enumerable
                .Range(0, Occurrences(start, length).Count)
                .Select(year => all - LogBayesFactor(start, length, year))
                .ToList();
            return added.Count(a => a >= least) >= 2 && added.TrueForAll(a => a > -1e-9);
        }

        /// <summary>The stretch in each year that was seen whole, in days from the first.</summary>
        private List<(int From, int To)> Occurrences(int start, int length)
        {
            var found = new List<(int, int)>();
            for (var from = start; from + length - 1 <= _last - _first; from = NextYear(from))
                found.Add((from, from + length - 1));
            return found;
        }

        private int NextYear(int day) => CivilDayNumber.Number(_firstDay.PlusDays(day).PlusYears(1)) - _first;

        // Each kind's mean and variance integrated out under its prior; what does not depend on the closure is left away.
        private double LogLikelihood(IReadOnlyList<(int From, int To)> closed)
        {
            CountClosed(closed);
            Array.Clear(_count);
            Array.Clear(_sum);
            Array.Clear(_squares);
            var logs = 0.0;
            for (var i = 0; i < _arrived.Length; i++)
            {
                var days = _arrived[i] - _ordered[i] - (_closedBefore[_arrived[i] + 1] - _closedBefore[_ordered[i] + 1]);
                var log = Math.Log(LeadTime.CountedDays(days));
                logs += log;
                log -= _priors[_kind[i]].Centre;
                _count[_kind[i]]++;
                _sum[_kind[i]] += log;
                _squares[_kind[i]] += log * log;
            }
            var total = -logs;
            for (var kind = 0; kind < _priors.Length; kind++)
                total += LeadTime.LogMarginal(_priors[kind], _count[kind], _sum[kind], _squares[kind]);
            return total;
        }

        private void CountClosed(IReadOnlyList<(int From, int To)> closed)
        {
            var next = 0;
            for (var day = 0; day < _known.Length; day++)
            {
                while (next < closed.Count && closed[next].To < day)
                    next++;
                var isClosed = _known[day] || next < closed.Count && closed[next].From <= day;
                _closedBefore[day + 1] = _closedBefore[day] + (isClosed ? 1 : 0);
            }
        }
    }
}

/// <summary>When an order went out and when it came.</summary>
/// <param name="Kind">Whose lead times lie about the same middle.</param>
/// <param name="Prior">The practice's row for that kind.</param>
public readonly record struct OrderSpan(LocalDate OrderedOn, LocalDate ArrivedOn, int Kind, LeadTimePrior Prior);

/// <param name="From">The first day, in the last year in which it was seen whole.</param>
/// <param name="To">The last day, included.</param>
/// <param name="Years">Years in which it was seen.</param>
/// <param name="LogFactor">The logarithm of the Bayes factor.</param>
public sealed record RepeatedClosure(LocalDate From, LocalDate To, int Years, double LogFactor)
{
    /// <summary>Whether it meets days of another year, as they fall in this one.</summary>
    public bool Meets(LocalDate from, LocalDate to)
    {
        var years = From.Year - from.Year;
        return Enumerable.Range(-1, 3).Any(shift => from.PlusYears(years + shift) <= To && to.PlusYears(years + shift) >= From);
    }
}
