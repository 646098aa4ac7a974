namespace HairClinic.Web.Shell;

/// <summary>A client's page whose own query asks whether the sign-in still holds, so that nobody needs to ask before.</summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class ChecksSignInAttribute : Attribute;
