namespace HairClinic.Web.Data.Work;

/// <summary>Whose next orders to recalculate.</summary>
public sealed record PlanOrdersBody(IReadOnlyList<Guid> ClientIds);
