namespace HairClinic.Web.Workers;

/// <summary>Whose next orders to reckon anew.</summary>
public sealed record PlanOrdersBody(IReadOnlyList<Guid> ClientIds);
