namespace HairClinic.Web.Data.Rows;

/// <summary>How somebody proved who they are.</summary>
public enum SignInWay
{
    Password,
    PasswordAndCode,
    PasswordAndRecoveryCode,
    Passkey,

    /// <summary>A PIN at a shared tablet where they are signed in already.</summary>
    Pin,

    /// <summary>The practice's own sign-in provider.</summary>
    Provider,
}
