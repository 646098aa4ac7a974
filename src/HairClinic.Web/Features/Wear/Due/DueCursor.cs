using NodaTime;
using NodaTime.Text;

namespace HairClinic.Web.Features.Wear;

/// <summary>The last row of a page, from which the next one goes on. It is written into the address bar.</summary>
/// <param name="Rank">0 among the lifted, 1 after them.</param>
public sealed record DueCursor(int Rank, LocalDate ClosesOn, Guid BondId)
{
    public override string ToString() => $"{Rank}_{LocalDatePattern.Iso.Format(ClosesOn)}_{BondId:N}";

    /// <returns>Null for anything that is not a cursor; the list then starts from its beginning.</returns>
    public static DueCursor? Read(string? text) =>
        text?.Split('_') is [("0" or "1") and var rank, var day, var id]
        && LocalDatePattern.Iso.Parse(day).TryGetValue(default, out var closes)
        && Guid.TryParseExact(id, "N", out var bond)
            ? new(rank[0] - '0', closes, bond)
            : null;
}
