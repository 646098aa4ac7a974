namespace HairClinic.Web.Accounts;

/// <summary>More passwords, PINs and codes are to be checked at this moment than the machine takes on; nothing was begun.</summary>
public sealed class TooBusyException() : Exception(Sentence)
{
    public const string Sentence = "Very many are signing in at this moment. Nothing was changed: try again in a moment.";
}
