namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Something a reader of a fit should know, in a plain sentence with its arguments ({0}).</summary>
public sealed record FitNote(string Sentence, string? Argument = null)
{
    public static readonly FitNote NothingEnded = new(
        "No end has been seen yet: what is shown is what was assumed, moved by those that went on."
    );
    public static readonly FitNote EverythingEndedEarlier = new(
        "Every end is known only as \"by then\": what is shown is what was assumed, moved by how early those were."
    );
    public static readonly FitNote NoRows = new("Nothing has been seen yet: what is shown is what was assumed.");
    public static readonly FitNote OneClient = new("All rows are one client's: how clients differ is what was assumed.");

    public static FitNote AssumedOf(string covariate) => new("The rows cannot tell the effect of {0}: it is what was assumed.", covariate);

    public string Text => Argument is null ? Sentence : Sentence.Replace("{0}", Argument, StringComparison.Ordinal);
}
