namespace HairClinic.Web.Data.Work;

/// <summary>Whose due dates to work out anew; null for every open bond of the practice.</summary>
public sealed record RefreshDueDatesBody(Guid? ClientId);
