namespace HairClinic.Web.Data.Accounts;

/// <summary>A client whose page somebody may open.</summary>
public sealed record OwnPage(Guid ClientId, string Name);
