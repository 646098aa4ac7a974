namespace HairClinic.Web.Accounts;

/// <summary>A client whose page somebody may open.</summary>
/// <param name="OpensAll">Whether the address is confirmed; else it opens their dates only.</param>
public sealed record OwnPage(Guid ClientId, string Name, bool OpensAll);
