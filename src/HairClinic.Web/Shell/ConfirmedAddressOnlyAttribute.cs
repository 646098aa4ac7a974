namespace HairClinic.Web.Shell;

/// <summary>A client's page or endpoint that shows what they confided: it opens only by an e-mail address that is confirmed.</summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class ConfirmedAddressOnlyAttribute : Attribute;
