namespace HairClinic.Domain.Clients;

/// <summary>How much of a client's own pages an e-mail address opens.</summary>
public enum AddressOpens
{
    /// <summary>Not even a link is sent to it.</summary>
    Nothing,

    /// <summary>The first page, booking, reporting a lift, aftercare, the calendar, settings: what helps with dates and tells of nothing else.</summary>
    DatesOnly,

    /// <summary>What they confided as well: photos, units, consents, who saw it, and all of it to take along.</summary>
    Everything,
}
