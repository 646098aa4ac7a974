using HairClinic.Domain.Replacement;

namespace HairClinic.Web.Features.Outlook;

/// <summary>A client with what was on their head and in house.</summary>
public sealed record ClientHistory(Guid Id, string Code, string Name, Guid SalonId, HairHistory Hair);
