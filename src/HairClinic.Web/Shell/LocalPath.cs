namespace HairClinic.Web.Shell;

/// <summary>Where to go back to: only paths of this site, so that a link sends nobody elsewhere.</summary>
public static class LocalPath
{
    public static string OrStart(string? path) => path is ['/', not ('/' or '\\'), ..] && !path.Any(char.IsControl) ? path : "/";
}
