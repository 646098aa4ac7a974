namespace HairClinic.Web.Workers;

/// <summary>A message to a client or a person. Discreet: nothing in it says what a visit is for.</summary>
public sealed record Letter(string To, string Subject, string Text)
{
    /// <summary>The client it is to, who may want no letters; null for what they asked for themselves, and for staff.</summary>
    public Guid? ClientId { get; init; }
}
