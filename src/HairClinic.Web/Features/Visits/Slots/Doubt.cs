namespace HairClinic.Web.Features.Visits;

/// <summary>What speaks against a time somebody typed. It warns; a second tap books all the same.</summary>
public enum Doubt
{
    Past,
    OutsideOpeningHours,
    PersonNotAtWork,
    PersonNotAlone,

    /// <summary>A clearance blocks this kind of service for the client; why is not for the desk.</summary>
    AskStylistFirst,
}
