namespace HairClinic.Web.Features.Binder;

/// <summary>What bringing a sheet does, or would do. A row that cannot be brought counts as neither new nor changed.</summary>
public sealed record ImportReport(
    string Sheet,
    int New,
    int Changed,
    int Unchanged,
    IReadOnlyList<ImportProblem> Problems,
    IReadOnlyList<MissingThing> Missing
)
{
    /// <summary>Rows that can be brought, and that somebody should look at first.</summary>
    public IReadOnlyList<ImportProblem> Doubts { get; init; } = [];
}
