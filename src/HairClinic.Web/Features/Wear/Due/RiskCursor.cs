using System.Globalization;

namespace HairClinic.Web.Features.Wear;

/// <summary>The last row of a page of those at risk; the next goes on with fewer expected days.</summary>
public sealed record RiskCursor(double Days, Guid ClientId)
{
    public override string ToString() => $"{Days.ToString("R", CultureInfo.InvariantCulture)}_{ClientId:N}";

    /// <returns>Null for anything that is not such a cursor; the list then starts from its beginning.</returns>
    public static RiskCursor? Read(string? text) =>
        text?.Split('_') is [var days, var id]
        && double.TryParse(days, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
        && double.IsFinite(number)
        && Guid.TryParseExact(id, "N", out var client)
            ? new(number, client)
            : null;
}
