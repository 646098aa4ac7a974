namespace HairClinic.Web.Mail;

/// <summary>There is no way for a letter to leave, and trying again changes nothing.</summary>
public sealed class NoMailWayException() : Exception("No mail server is set.");
