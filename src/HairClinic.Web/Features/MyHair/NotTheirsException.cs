namespace HairClinic.Web.Features.MyHair;

/// <summary>What a form names is not the client's own; to them it does not exist.</summary>
public sealed class NotTheirsException() : InvalidOperationException("There is no such thing of this client's.");
