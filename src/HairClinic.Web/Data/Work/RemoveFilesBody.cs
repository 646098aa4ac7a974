namespace HairClinic.Web.Data.Work;

/// <summary>Sealed files that nobody can open any more.</summary>
public sealed record RemoveFilesBody(IReadOnlyList<Guid> Files);
