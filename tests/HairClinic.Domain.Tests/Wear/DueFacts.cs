using CsCheck;
using HairClinic.Domain.Wear;
using NodaTime;

namespace HairClinic.Domain.Tests.Wear;

/// <summary>The plain facts behind a due question, kept apart so that a second, naive rule can be asked the same.</summary>
public sealed record DueFacts(
    string ZoneId,
    LocalDate AppliedOn,
    int EarliestWeeks,
    int LatestWeeks,
    int TargetDays,
    int OpenBits,
    int PreferredBits,
    int CureHours,
    DateInterval[] Closures,
    LifeEventDays[] Events,
    double HoldDays
)
{
    // The last two zones skipped a civil day, on which no one can be due.
    private static readonly Gen<(string ZoneId, LocalDate Around)> Places = Gen.OneOf<(string, LocalDate)>(
        ("Europe/London", new(2026, 2, 1)),
        ("America/New_York", new(2025, 9, 20)),
        ("Australia/Lord_Howe", new(2025, 3, 1)),
        ("America/Sao_Paulo", new(2018, 10, 1)),
        ("Pacific/Apia", new(2011, 11, 20)),
        ("Pacific/Fakaofo", new(2011, 11, 20))
    );

    private static readonly Gen<(int First, int Length)> Stretches = Gen.Select(Gen.Int[-10, 190], Gen.Int[0, 25]);

    // Whatever must be sound to a percentage, and, for one in three, off before it.
    private static readonly Gen<(int First, int Length, int Ahead, bool Away, int? Sound)> Dates = Gen.Select(
        Gen.OneOf(Gen.Int[-10, 60], Gen.Int[-10, 190]),
        Gen.Int[0, 25],
        Gen.Int[0, 12],
        Gen.Bool,
        Gen.OneOf(Gen.Int[50, 99].Select(percent => (int?)percent), Gen.Const((int?)99), Gen.Const((int?)null))
    );

    public static Gen<DueFacts> Any { get; } =
        from place in Places
        from shift in Gen.Int[0, 60]
        from latest in Gen.Int[1, HoldWindow.LongestWeeks]
        from earliest in Gen.Int[1, latest]
        from target in Gen.Int[1, 7 * latest + 20]
        from open in Gen.Int[0, 127]
        from preferred in Gen.OneOf(Gen.Const(0), Gen.Int[0, 127])
        from cure in Gen.Int[24, 48]
        from closures in Stretches.Array[0, 4]
        from events in Dates.Array[0, 3]
        from hold in Gen.Double[5, 250]
        let applied = place.Around.PlusDays(shift)
        select new DueFacts(
            place.ZoneId,
            applied,
            earliest,
            latest,
            target,
            open,
            preferred,
            cure,
            [.. closures.Select(stretch => Stretch(applied, stretch.First, stretch.Length))],
            [.. events.Select(date => Event(applied, date))],
            hold
        );

    public DateTimeZone Zone => DateTimeZoneProviders.Tzdb[ZoneId];

    public OpeningDays Opening => new(new(OpenBits), Closures, Zone);

    public DueRuleInput Question =>
        new(AppliedOn, new(EarliestWeeks, LatestWeeks), TargetDays, Opening)
        {
            PreferredWeekdays = new(PreferredBits),
            Cure = new(CureHours),
            Events = [.. Events],
            Survival = Survival,
        };

    /// <summary>Some falling curve: what is asked of the rule is what it does with it.</summary>
    public double Survival(int days) => Math.Exp(-Math.Pow(days / HoldDays, 4));

    public DueWindow Answer => DueRule.DueWindowFor(Question);

    private static DateInterval Stretch(LocalDate applied, int first, int length) =>
        new(applied.PlusDays(first), applied.PlusDays(first + length));

    private static LifeEventDays Event(LocalDate applied, (int First, int Length, int Ahead, bool Away, int? Sound) date)
    {
        var (first, last) = (applied.PlusDays(date.First), applied.PlusDays(date.First + date.Length));
        return date.Sound is { } percent
            ? LifeEventDays.ToBeReadyFor(first, last, percent, date.Ahead, date.Away)
            : LifeEventDays.OffBefore(first, last, date.Ahead, date.Away);
    }
}
