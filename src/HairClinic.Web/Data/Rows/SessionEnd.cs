namespace HairClinic.Web.Data.Rows;

/// <summary>Why a sign-in ended before its time.</summary>
public enum SessionEnd
{
    SignedOut,

    /// <summary>Its person ended it from another screen.</summary>
    EndedByPerson,

    /// <summary>An owner or manager ended it.</summary>
    EndedByManager,

    /// <summary>A password, passkey or codes app of theirs was changed.</summary>
    SignInChanged,

    /// <summary>The shared tablet was locked, or somebody else took it.</summary>
    Locked,

    /// <summary>They signed in at more places than one person has.</summary>
    TooMany,
}
