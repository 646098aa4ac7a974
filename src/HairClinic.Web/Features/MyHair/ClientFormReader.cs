using HairClinic.Web.Ui;
using NodaTime.Text;

namespace HairClinic.Web.Features.MyHair;

/// <summary>Reads what a form or an address of a client's page says; what cannot be read is nothing.</summary>
public static class ClientFormReader
{
    public static Guid Id(string? text) => Guid.TryParse(text, out var id) ? id : Guid.Empty;

    /// <summary>Of the row that a page showed; what cannot be read is none that ever was.</summary>
    public static uint Version(string? text) => uint.TryParse(text, CultureInfo.InvariantCulture, out var version) ? version : 0;

    public static Instant? Moment(string? text) =>
        text is not null && InstantPattern.General.Parse(text).TryGetValue(default, out var instant) ? instant : null;

    public static LocalDate? Day(string? text) => text is not null && Dates.TryParseIso(text, out var day) ? day : null;
}
