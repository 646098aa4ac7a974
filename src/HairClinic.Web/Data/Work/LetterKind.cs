namespace HairClinic.Web.Data.Work;

/// <summary>What a letter is about, for the list of those that did not go.</summary>
public enum LetterKind
{
    Other,
    SignInLink,
    Invitation,
    ConfirmAddress,
    AddressEnded,
    SignInChanged,
}
