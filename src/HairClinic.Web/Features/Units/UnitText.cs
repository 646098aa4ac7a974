using HairClinic.Web.Language;
using HairClinic.Web.Ui;

namespace HairClinic.Web.Features.Units;

/// <summary>Where a unit is and how it stands, in words.</summary>
internal static class UnitText
{
    /// <summary>" · Elm Row, drawer 3 · to be cleaned"; empty where nothing is known.</summary>
    public static string Where(HairSystem unit, string? placeName, IStringLocalizer words) =>
        Where(unit.State, unit.Place, placeName, unit.Spot, unit.Cleaning, words);

    public static string Where(
        UnitState state,
        UnitPlace? place,
        string? placeName,
        string? spot,
        UnitCleaning? cleaning,
        IStringLocalizer words
    )
    {
        var parts = new List<string>();
        if (placeName is not null)
            parts.Add(spot is null ? placeName : $"{placeName}, {spot}");
        else if (place == UnitPlace.Client && state is UnitState.Resting or UnitState.EmergencySpare)
            parts.Add(words["with the client"]);
        if (cleaning is { } marked && state.IsBondable())
            parts.Add(words.Word(marked));
        return string.Concat(parts.Select(p => " · " + p));
    }
}
