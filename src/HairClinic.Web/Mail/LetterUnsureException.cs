namespace HairClinic.Web.Mail;

/// <summary>The letter was being handed over when the line broke, or answers stopped: it may have gone, or not.</summary>
public sealed class LetterUnsureException(Exception inner) : Exception("Nobody knows whether the letter went.", inner);
