namespace HairClinic.Web.Shell;

/// <summary>Carries the frame's facts from the request to the layout.</summary>
public sealed class ShellFactsHolder
{
    public ShellFacts? Facts { get; set; }
}
