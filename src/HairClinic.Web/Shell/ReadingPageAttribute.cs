namespace HairClinic.Web.Shell;

/// <summary>
/// A client's page that is only read: it has no form and keeps nothing for a later request, so it is rendered without what those
/// need. To lead elsewhere it says so to the response, as there is nobody to navigate.
/// </summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class ReadingPageAttribute : Attribute;
