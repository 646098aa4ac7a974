namespace HairClinic.Web.Shell;

/// <summary>A salon the person may switch to.</summary>
public sealed record SalonOption(Guid Id, string Name);
