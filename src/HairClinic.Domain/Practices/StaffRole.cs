namespace HairClinic.Domain.Practices;

/// <summary>What a person of the practice may see and do.</summary>
public enum StaffRole
{
    Owner,
    Manager,
    FrontDesk,
    Stylist,
    Trainee,
}
