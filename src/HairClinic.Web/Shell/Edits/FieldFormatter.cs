using System.Collections;
using HairClinic.Web.Language;
using HairClinic.Web.Ui;
using HairClinic.Web.Ui.Fields;
using HairClinic.Web.Ui.Wear;

namespace HairClinic.Web.Shell.Edits;

/// <summary>Says the values of a form as people read them: names for ids, days and money as everywhere.</summary>
/// <param name="names">Names of ids and codes, as the form offers them.</param>
public sealed class FieldFormatter(IStringLocalizer words, IReadOnlyDictionary<object, string> names)
{
    public IStringLocalizer Words => words;

    public string Label(FieldAttribute field, object? of) =>
        of is null ? words[field.Label]
        : field.Label.Contains("{0}", StringComparison.Ordinal) ? words[field.Label, Format(of)]
        : $"{words[field.Label].Value}: {Format(of)}";

    public string Format(object? value, FieldAttribute? field = null) =>
        value switch
        {
            null => words[field?.Nothing ?? "nothing"],
            IFormRow row => row.Describe(this),
            IEnumerable rows and not string => string.Join(", ", rows.Cast<object?>().Select(r => Format(r))),
            bool yes => words[yes ? "yes" : "no"],
            Guid id => names.GetValueOrDefault(id) ?? words["one that is not offered here"],
            string code when field?.Named ?? false => names.GetValueOrDefault(code) ?? code,
            Enum word => words.WordOfBoxed(word),
            LocalDate day => Dates.Day(day),
            LocalTime time => Dates.Time(time),
            WeekdaySet days => WeekdayText.Name(days),
            MoneyAmount money =>
                $"{MinorUnits.Write(money.Minor, CurrencyDigits.For(money.Currency), CultureInfo.CurrentCulture)} {money.Currency}".Trim(),
            int number when field?.Format is { } said => words[said, number],
            _ => Convert.ToString(value, CultureInfo.CurrentCulture) ?? "",
        };
}
