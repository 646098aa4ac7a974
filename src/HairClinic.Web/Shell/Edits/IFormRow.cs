namespace HairClinic.Web.Shell.Edits;

/// <summary>A row of a list within a form, such as a closure or a lot. Two people's rows are compared row by row.</summary>
public interface IFormRow
{
    /// <summary>What the row is known by, however it is changed; null: it is new.</summary>
    object? Key { get; }

    /// <summary>All of the row in a few words.</summary>
    string Say(EditWords words);
}
