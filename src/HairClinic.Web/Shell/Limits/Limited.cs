namespace HairClinic.Web.Shell.Limits;

/// <summary>What is limited, each with its own count.</summary>
public enum Limited
{
    /// <summary>Proving who one is: password, code, PIN.</summary>
    SignIn,

    /// <summary>Having a link sent.</summary>
    AskLink,

    /// <summary>Trying a link, or a code that opens something.</summary>
    UseLink,

    Upload,

    /// <summary>Taking out much at once.</summary>
    Export,
}
