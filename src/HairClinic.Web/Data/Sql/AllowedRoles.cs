namespace HairClinic.Web.Data.Sql;

/// <summary>Whom a rule about rows lets through; the names are those of <see cref="Actor.Role"/>.</summary>
[Flags]
public enum AllowedRoles
{
    Nobody = 0,
    Owner = 1,
    Manager = 2,
    FrontDesk = 4,
    Stylist = 8,
    Trainee = 16,
    Client = 32,
    Job = 64,

    Manage = Owner | Manager | Job,
    Desk = Owner | Manager | FrontDesk | Job,

    /// <summary>Who works on heads.</summary>
    Chair = Owner | Stylist | Trainee | Job,
    Staff = Owner | Manager | FrontDesk | Stylist | Trainee | Job,

    /// <summary>Who may read and write about health.</summary>
    Health = Owner | Manager | Stylist | Job,
    Everybody = Staff | Client,
}
