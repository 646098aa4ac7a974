using HairClinic.Web.Language;

namespace HairClinic.Web.Features.Units;

/// <summary>Where a unit is and how it stands, in words.</summary>
internal static class UnitText
{
    /// <summary>" · Elm Row, drawer 3 · to be cleaned"; empty where nothing is known.</summary>
    public static string Where(HairSystem unit, string? placeName, IStringLocalizer words)
    {
        var parts = new List<string>();
        if (placeName is not null)
            parts.Add(unit.Spot is null ? placeName : $"{placeName}, {unit.Spot}");
        else if (unit.IsTakenHome)
            parts.Add(words["with the client"]);
        if (unit.Cleaning is { } marked && unit.State.IsBondable())
            parts.Add(words.Word(marked));
        return string.Concat(parts.Select(p => " · " + p));
    }
}
