using HairClinic.Web.Shell.Edits;

namespace HairClinic.Web.Features.Settings;

/// <summary>What a form of the practice sends: it knows the row it opened on. Every field of it has a <see cref="FieldAttribute"/>, so that two edits can be put together.</summary>
public interface IEditable
{
    /// <summary>Of the row the form opened on; 0 for a new one.</summary>
    uint Version { get; set; }

    /// <summary>Take it out of use; what it was used for stays.</summary>
    bool Retire { get; set; }
}
