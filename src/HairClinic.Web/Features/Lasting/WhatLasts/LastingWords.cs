using HairClinic.Web.Language;

namespace HairClinic.Web.Features.Lasting;

/// <summary>What is found, in plain sentences.</summary>
internal static class LastingWords
{
    public static string FormatGroupName(LastingGroup group, IStringLocalizer<Words> words) => group.Name ?? words["not written down"];

    public static string FormatDayNumber(double day) => day.ToString("0.#", CultureInfo.CurrentCulture);

    public static string FormatPValue(double p, CultureInfo culture) =>
        p < 0.001 ? "p\u00a0<\u00a0" + 0.001.ToString(culture) : "p\u00a0=\u00a0" + p.ToString("0.000", culture);

    /// <summary>The comparison in one sentence.</summary>
    public static string Describe(GroupComparison compared, LastingSubject subject, IStringLocalizer<Words> words)
    {
        if (compared.Undefined is { } why)
            return words["Can't tell yet. {0}", Describe(why, words)];
        if (compared is not { Sooner: { } sooner, Later: { } later })
            return words["Can't tell yet: that takes two groups of which {0} each have ended.", LastingGroup.FewestEnded];
        var chance = FormatPValue(compared.P, CultureInfo.CurrentCulture);
        if (compared.P >= GroupComparison.Chance)
            return compared.InModel
                ? words[
                    "No difference can be told yet: each against its own window, what is left between them could well be chance ({0}).",
                    chance
                ]
                : words["No difference can be told yet: what is seen between them could well be chance ({0}).", chance];
        var said = compared.TimesAsLong is { } times
            ? InModel(sooner, later, times.ToString("0.00", CultureInfo.CurrentCulture), subject == LastingSubject.Hold, words)
            : Sooner(sooner, later, subject == LastingSubject.Hold, words);
        return said
            + " "
            + (
                compared.Compared == 2
                    ? words["That this is chance is unlikely ({0}).", chance]
                    : words["That all {0} last alike and this is chance is unlikely ({1}).", compared.Compared, chance]
            );
    }

    // Where windows differ, as from base to base, the plain days may well say otherwise.
    private static string InModel(LastingGroup sooner, LastingGroup later, string times, bool isHold, IStringLocalizer<Words> words)
    {
        string said = isHold
            ? words["Each against its own window, {0} lifts sooner than {1}: {2} times as long.", sooner.Name!, later.Name!, times]
            : words["Each against its own window, {0} wears out sooner than {1}: {2} times as long.", sooner.Name!, later.Name!, times];
        return sooner.Curve.Median is { } first && later.Curve.Median is { } last
            ? said + " " + words["As seen, half by day {0} against day {1}.", FormatDayNumber(first), FormatDayNumber(last)]
            : said;
    }

    private static string Sooner(LastingGroup sooner, LastingGroup later, bool isHold, IStringLocalizer<Words> words)
    {
        if (sooner.Curve.Median is not { } first || later.Curve.Median is not { } last)
            return isHold
                ? words["{0} lifts sooner than {1}.", sooner.Name!, later.Name!]
                : words["{0} wears out sooner than {1}.", sooner.Name!, later.Name!];
        var (early, late) = (FormatDayNumber(first), FormatDayNumber(last));
        return isHold
            ? words["{0} lifts sooner than {1}: half by day {2} against day {3}.", sooner.Name!, later.Name!, early, late]
            : words["{0} wears out sooner than {1}: half by worn day {2} against {3}.", sooner.Name!, later.Name!, early, late];
    }

    public static string Describe(LifetimeFitNote note, IStringLocalizer<Words> words) =>
        note.Argument is { } argument ? words[note.Sentence, HabitOf(argument, words)] : words[note.Sentence];

    private static string HabitOf(string column, IStringLocalizer<Words> words) =>
        Learning.CovariateValue.ParseHabit(column) is { } habit ? words[CovariateCatalog.DefinitionOf(habit).Name] : column;
}
