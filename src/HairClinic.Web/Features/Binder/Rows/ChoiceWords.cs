namespace HairClinic.Web.Features.Binder;

/// <summary>Our sheets' words for the states and kinds of the book.</summary>
public static class ChoiceWords
{
    // Where a sheet has no word of its own for a finer state, it says the coarser one.
    private static readonly (Enum Value, string Word)[] Special =
    [
        (UnitState.ReturnedToClient, "returned"),
        (UnitState.Remake, "ordered"),
        (UnitState.Away, "resting"),
        (UnitState.Lent, "resting"),
        (UnitState.Refused, "retired"),
        (UnitState.Cancelled, "retired"),
        (VisitState.Arrived, "booked"),
        (VisitState.InChair, "booked"),
        (Domain.Bonding.RemovalReason.SalonsChoice, "salon's choice"),
        // Old books say “skin” of a reaction.
        (Domain.Bonding.RemovalReason.Skin, "skin needs care"),
    ];

    public static string? ToWord<T>(T? value)
        where T : struct, Enum =>
        value is { } some ? Special.Where(s => s.Value.Equals(some)).Select(s => s.Word).FirstOrDefault() ?? Spaced(some.ToString()) : null;

    public static T? FromWord<T>(string? word)
        where T : struct, Enum => word is null ? null : Enum.GetValues<T>().Cast<T?>().First(value => ToWord(value) == word);

    private static string Spaced(string name) =>
        string.Concat(
            name.Select(
                (letter, at) => at > 0 && char.IsUpper(letter) ? $" {char.ToLowerInvariant(letter)}" : $"{char.ToLowerInvariant(letter)}"
            )
        );
}
