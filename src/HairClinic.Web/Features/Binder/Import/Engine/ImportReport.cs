namespace HairClinic.Web.Features.Binder.Import.Engine;

/// <summary>What bringing a sheet does, or would do.</summary>
public sealed record ImportReport(
    string Sheet,
    int New,
    int Changed,
    int Unchanged,
    IReadOnlyList<ImportProblem> Problems,
    IReadOnlyList<MissingThing> Missing
);
