namespace HairClinic.Web.Workers;

/// <summary>Somebody asked for a link to this address.</summary>
public sealed record AnswerAskBody(string Email);
