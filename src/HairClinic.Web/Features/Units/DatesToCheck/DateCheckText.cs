using HairClinic.Web.Language;
using HairClinic.Web.Ui;

namespace HairClinic.Web.Features.Units;

/// <summary>A question about dates, and what became of it, in sentences that can be read aloud.</summary>
public static class DateCheckText
{
    public static string Question(DatesToCheck.Row row, IStringLocalizer words)
    {
        var (check, from) = (row.Check, Dates.Day(row.Check.From, row.Today));
        var until = check.Until is { } end ? Dates.Day(end, row.Today) : "";
        var workshop = row.Workshop ?? words["The workshop"].Value;
        return check.Kind switch
        {
            DateCheckKind.OrderTook => words[
                "{0} took {1} days, from {2} to {3}. {4} usually takes {5} to {6}. Is the date right?",
                OrderName(row, words),
                row.CalendarDays,
                from,
                until,
                workshop,
                check.UsualFrom,
                check.UsualTo
            ],
            DateCheckKind.OrderWaiting => words[
                "{0} has been on its way for {1} days, since {2}. {3} usually takes {4} to {5}. Is it still on its way? Until somebody says so it is not counted on.",
                OrderName(row, words),
                row.CalendarDays,
                from,
                workshop,
                check.UsualFrom,
                check.UsualTo
            ],
            DateCheckKind.WorkshopClosed => words[
                "It seems {0} sends nothing from about {1} to {2}, every year. Enter it as closed?",
                workshop,
                Yearly(check.From),
                Yearly(check.Until ?? check.From)
            ],
            DateCheckKind.BondHeld when check.Until is null => words[
                "The bond of {0} has held for {1} days. Bonds like it usually hold {2} to {3}. Is the date right?",
                from,
                check.Days,
                check.UsualFrom,
                check.UsualTo
            ],
            DateCheckKind.BondHeld => words[
                "The bond of {0} is written down until {1}: {2} days. Bonds like it usually hold {3} to {4}. Are the dates right?",
                from,
                until,
                check.Days,
                check.UsualFrom,
                check.UsualTo
            ],
            _ => words[
                "The unit was worn for {0} days, first on {1}. Units like it usually last {2} to {3}. Are its dates right?",
                check.Days,
                from,
                check.UsualFrom,
                check.UsualTo
            ],
        };
    }

    public static string Said(DatesToCheck.Row row, DateCheckAnswer answer, IStringLocalizer words) =>
        (row.Check.Kind, answer) switch
        {
            (DateCheckKind.OrderWaiting, _) => words[
                "Noted: {0} is still on its way. It is counted on again, and asked about again in {1} days.",
                row.Serial ?? "",
                OrderWaitingCheck.Days
            ],
            (_, DateCheckAnswer.Right) => words["Noted: the dates of {0} are right, and count from tonight.", row.Serial ?? ""],
            _ => words["Noted: nothing is learnt from these dates of {0}.", row.Serial ?? ""],
        };

    private static string Yearly(LocalDate day) => day.ToDateOnly().ToString("M", CultureInfo.CurrentCulture);

    private static string OrderName(DatesToCheck.Row row, IStringLocalizer words) =>
        row.Order is { } number ? words["Order {0}", number] : words["The order of unit {0}", row.Serial ?? ""];
}
