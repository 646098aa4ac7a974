namespace HairClinic.EmbeddedPostgres;

/// <summary>The default folders. deploy/run.sh knows the same places.</summary>
public static class DefaultFolders
{
    /// <summary>
    /// The practice's data. Root gets a folder outside its home: PostgreSQL refuses to run as root,
    /// and the user it runs as instead cannot enter root's home.
    /// </summary>
    public static string Data =>
        Environment.IsPrivilegedProcess ? "/var/lib/hairclinic" : InHome("XDG_DATA_HOME", ".local/share", "hairclinic");

    /// <summary>Downloaded tools; <c>HAIRCLINIC_TOOLS</c> names another folder.</summary>
    public static string Tools =>
        Environment.GetEnvironmentVariable("HAIRCLINIC_TOOLS") is { Length: > 0 } chosen ? Path.GetFullPath(chosen)
        : Environment.IsPrivilegedProcess ? "/var/cache/hairclinic/tools"
        : InHome("XDG_CACHE_HOME", ".cache", "hairclinic/tools");

    private static string InHome(string variable, string usual, string rest)
    {
        var root = Environment.GetEnvironmentVariable(variable);
        if (string.IsNullOrEmpty(root))
            root = Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), usual);
        return Path.Combine(root, rest);
    }
}
