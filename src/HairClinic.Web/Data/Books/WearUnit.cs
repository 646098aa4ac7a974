using HairClinic.Domain.HairSystems;

namespace HairClinic.Web.Data.Books;

/// <summary>A unit with its promises, and the name of its kind.</summary>
public sealed record WearUnit(HairSystem Unit, string Kind);
