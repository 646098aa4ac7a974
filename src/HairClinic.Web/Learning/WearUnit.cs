using HairClinic.Domain.HairSystems;

namespace HairClinic.Web.Learning;

/// <summary>A unit with its promises, and the name of its kind.</summary>
public sealed record WearUnit(HairSystem Unit, string Kind);
