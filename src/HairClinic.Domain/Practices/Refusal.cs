using System.Globalization;

namespace HairClinic.Domain.Practices;

/// <summary>
/// The domain says no, in a sentence a person can act on. The sentence is a template (the key a
/// screen translates) and its arguments; nothing was changed when it is thrown.
/// </summary>
public sealed class Refusal(string sentence, params object[] arguments)
    : Exception(string.Format(CultureInfo.InvariantCulture, sentence, arguments))
{
    public string Sentence { get; } = sentence;

    public IReadOnlyList<object> Arguments { get; } = arguments;

    /// <summary>The property of the input it is about: a form that has it shows the sentence there. Null where it is about the whole.</summary>
    public string? Field { get; init; }
}
