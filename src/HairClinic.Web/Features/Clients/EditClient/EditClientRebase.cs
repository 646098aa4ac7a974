using HairClinic.Domain.Wear;

namespace HairClinic.Web.Features.Clients.EditClient;

/// <summary>
/// Puts what somebody typed onto what another saved meanwhile. A field only the other changed takes the other's
/// value; a field both changed keeps what was typed and is named as a clash, so that nothing is lost silently.
/// </summary>
public static class EditClientRebase
{
    private static readonly Field[] Fields =
    [
        new("Name", i => i.Name, (from, to) => to.Name = from.Name),
        new("Called", i => i.CalledAs, (from, to) => to.CalledAs = from.CalledAs),
        new("Code", i => i.Code, (from, to) => to.Code = from.Code),
        new("Home salon", i => i.HomeSalonId, (from, to) => to.HomeSalonId = from.HomeSalonId),
        new("Phone", i => i.Phone, (from, to) => to.Phone = from.Phone),
        new("E-mail", i => i.Email, (from, to) => to.Email = from.Email),
        new("Birth date", i => i.BirthDate, (from, to) => to.BirthDate = from.BirthDate),
        new("Likes to come", i => i.PreferredDays, (from, to) => to.PreferredDays = from.PreferredDays),
        new("Wash and style", i => i.WashEveryDays, (from, to) => to.WashEveryDays = from.WashEveryDays),
        new("Note", i => i.Note, (from, to) => to.Note = from.Note),
        new("Left on", i => i.LeftOn, (from, to) => to.LeftOn = from.LeftOn),
    ];

    /// <param name="opened">What the form opened with.</param>
    /// <param name="saved">What is in the book now.</param>
    /// <param name="typed">What stands in the form; it is changed.</param>
    /// <returns>What the other changed, field by field.</returns>
    public static IReadOnlyList<Change> Onto(EditClient.Input opened, EditClient.Input saved, EditClient.Input typed)
    {
        var changes = new List<Change>();
        foreach (var field in Fields)
        {
            var (before, theirs, yours) = (Tidy(field.Get(opened)), Tidy(field.Get(saved)), Tidy(field.Get(typed)));
            if (Equals(before, theirs))
                continue;
            var clashes = !Equals(yours, before) && !Equals(yours, theirs);
            if (!clashes)
                field.Copy(saved, typed);
            changes.Add(new Change(field.Label, before, theirs, yours, clashes, () => field.Copy(saved, typed)));
        }
        typed.Version = saved.Version;
        return changes;
    }

    // An empty box and nothing at all are the same to a person.
    private static object? Tidy(object? value) =>
        value switch
        {
            string text => string.IsNullOrWhiteSpace(text) ? null : text.Trim(),
            WeekdaySet { IsEmpty: true } => null,
            _ => value,
        };

    private sealed record Field(string Label, Func<EditClient.Input, object?> Get, Action<EditClient.Input, EditClient.Input> Copy);

    /// <param name="Label">The field's, as the form has it.</param>
    /// <param name="Clashes">Both changed it, differently: what was typed stands in the form.</param>
    /// <param name="TakeTheirs">Puts the other's value into the form.</param>
    public sealed record Change(string Label, object? Before, object? Theirs, object? Yours, bool Clashes, Action TakeTheirs);
}
