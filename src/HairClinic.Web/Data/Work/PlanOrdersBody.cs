namespace HairClinic.Web.Data.Work;

/// <summary>Whose next orders to reckon anew.</summary>
public sealed record PlanOrdersBody(IReadOnlyList<Guid> ClientIds);
