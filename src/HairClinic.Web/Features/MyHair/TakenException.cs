namespace HairClinic.Web.Features.MyHair;

/// <summary>The time was free when the form was drawn and is not any more.</summary>
public sealed class TakenException() : InvalidOperationException("Somebody else took this time.");
