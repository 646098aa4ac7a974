namespace HairClinic.Web.Data.Rows;

/// <summary>The sign-in of a person of a practice. Role and salons are the person's, not the account's.</summary>
public sealed class AppUser : IdentityUser<Guid>
{
    public Guid PracticeId { get; set; }
    public Guid PersonId { get; set; }

    /// <summary>The salon whose day they look at, until they choose another.</summary>
    public Guid? AtSalonId { get; set; }

    /// <summary>The newest step of their codes app that was accepted: none is accepted twice.</summary>
    public long? LastCodeStep { get; set; }
}
