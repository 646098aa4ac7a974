namespace HairClinic.Web.Features.Wear;

/// <summary>The parts of the list. Each client is in one of lifted … put off; whoever is at risk of a gap may be in one of them too.</summary>
public enum DuePart
{
    /// <summary>Everyone who wants a call: lifted, overdue, open and opening, worst first.</summary>
    All,

    /// <summary>An edge came up, and no visit is booked. A lift is never put off.</summary>
    Lifted,

    /// <summary>The window has closed.</summary>
    Overdue,

    Open,

    /// <summary>The window opens within the practice's number of days.</summary>
    Opening,

    /// <summary>In one of the parts above, but a rebond, a fitting or a lift's repair is booked.</summary>
    Booked,

    /// <summary>Asked for later; back on the list on the day that was named.</summary>
    PutOff,

    /// <summary>May lack a unit that still wears well: a chance beyond what the practice accepts, worst first, bonded or not.</summary>
    AtRisk,
}
