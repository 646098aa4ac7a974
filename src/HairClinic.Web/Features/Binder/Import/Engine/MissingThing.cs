namespace HairClinic.Web.Features.Binder;

/// <summary>Something the file names that the book does not have yet. It is created only when a person says so.</summary>
/// <param name="What">Workshop, base, unit kind, product, lot, service, stylist or chair.</param>
/// <param name="Rows">In how many rows it is named.</param>
public sealed record MissingThing(MissingKind What, string Name, int Rows);
