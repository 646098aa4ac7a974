using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Books;

namespace HairClinic.Web.Features.Visits;

/// <summary>The client has another visit at the time that is wanted.</summary>
/// <param name="Visit">Null for whoever may not see it: to them the client is busy elsewhere.</param>
public sealed record ClientClash(ClientVisit? Visit)
{
    /// <param name="name">The client's.</param>
    public Refusal Refused(string name) =>
        Visit switch
        {
            null => new("{0} is busy elsewhere at that time.", name),
            { Chair: { } chair, From: var from, To: var to } => new(
                "{0} is booked {1}, {2}–{3} at {4}, {5}.",
                name,
                from.Date,
                from.TimeOfDay,
                to.TimeOfDay,
                Visit.Salon,
                chair
            ),
            { From: var from, To: var to } => new(
                "{0} is booked {1}, {2}–{3} at {4}.",
                name,
                from.Date,
                from.TimeOfDay,
                to.TimeOfDay,
                Visit.Salon
            ),
        };
}
