namespace HairClinic.Web.Shell;

/// <summary>The names of the rules about who may open what; the rules themselves live with the fence.</summary>
public static class Policies
{
    /// <summary>Anyone who works for the practice.</summary>
    public const string Staff = "staff";

    /// <summary>May book, move and ring: the desk and those above it.</summary>
    public const string Desk = "desk";

    /// <summary>May work at a chair: stylists and trainees.</summary>
    public const string Chair = "chair";

    /// <summary>May change what the practice is made of: managers and owners.</summary>
    public const string Manage = "manage";

    public const string Owner = "owner";
}
