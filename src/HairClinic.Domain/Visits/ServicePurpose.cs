namespace HairClinic.Domain.Visits;

/// <summary>What a service is for, as far as the schedule must know.</summary>
public enum ServicePurpose
{
    Consultation,
    Measuring,
    FirstFitting,
    Rebond,
    WashAndStyle,
    FixLift,
    Other,
}
