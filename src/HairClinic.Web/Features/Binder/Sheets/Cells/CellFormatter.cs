using NodaTime.Text;

namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>How the round-trip export spells values: the one spelling that <see cref="CellReader"/> gives back under <see cref="SheetConventions.ForExport"/>.</summary>
public static class CellFormatter
{
    private static readonly LocalTimePattern Time = LocalTimePattern.CreateWithInvariantCulture("HH:mm");
    private static readonly LocalTimePattern TimeWithSeconds = LocalTimePattern.CreateWithInvariantCulture("HH:mm:ss");

    public static string Format(string? text) => text ?? "";

    public static string Format(LocalDate? date) => date is { } day ? LocalDatePattern.Iso.Format(day) : "";

    public static string Format(IEnumerable<LocalDate> dates) => string.Join(" | ", dates.Select(LocalDatePattern.Iso.Format));

    public static string Format(LocalTime? time) => time is { } clock ? (clock.Second == 0 ? Time : TimeWithSeconds).Format(clock) : "";

    public static string Format(int? number) => number?.ToString(CultureInfo.InvariantCulture) ?? "";

    /// <summary>Without trailing zeros, so that the same number has one spelling.</summary>
    public static string Format(decimal? number) => number?.ToString("0.############################", CultureInfo.InvariantCulture) ?? "";

    public static string Format(bool? answer) =>
        answer switch
        {
            true => "yes",
            false => "no",
            null => "",
        };

    public static string Format(IEnumerable<IsoDayOfWeek> days) => string.Join(' ', days.Select(day => day.ToString()[..3]));

    /// <summary>The amount alone, with all decimals of its currency; the currency has a column of its own.</summary>
    public static string Format(SheetMoney? money)
    {
        if (money is not { } amount)
            return "";
        var decimals = CurrencyDigits.For(amount.Currency);
        return new decimal(amount.MinorUnits).Shifted(decimals).ToString("F" + decimals, CultureInfo.InvariantCulture);
    }

    private static decimal Shifted(this decimal number, int decimals) => decimals == 0 ? number : (number / 10).Shifted(decimals - 1);
}
