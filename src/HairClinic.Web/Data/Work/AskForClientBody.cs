namespace HairClinic.Web.Data.Work;

/// <param name="Id">Of the request there will be, if there is such a client.</param>
/// <param name="CodeOrPhone">As it was typed.</param>
public sealed record AskForClientBody(Guid Id, Guid SalonId, Guid AskedBy, string CodeOrPhone, string Because);
