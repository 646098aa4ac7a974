namespace HairClinic.Web.Tests.Layout;

/// <summary>The sources as they lie in the repository, for rules about how they are laid out.</summary>
public static class SourceTree
{
    public static readonly string Root = FindRoot();

    public static readonly string Web = Path.Combine(Root, "src", "HairClinic.Web");

    public static readonly string EmbeddedPostgres = Path.Combine(Root, "src", "HairClinic.EmbeddedPostgres");

    public static readonly string Features = Path.Combine(Web, "Features");

    public static readonly string WebTests = Path.Combine(Root, "tests", "HairClinic.Web.Tests");

    /// <summary>Files below a folder, without what a build leaves behind; paths are absolute.</summary>
    public static IEnumerable<string> Files(string folder, params ReadOnlySpan<string> endings)
    {
        var wanted = endings.ToArray();
        return Directory
            .EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Where(f => wanted.Any(e => f.EndsWith(e, StringComparison.Ordinal)))
            .Where(f => !Named(f).Split('/').Any(part => part is "bin" or "obj"))
            .Order(StringComparer.Ordinal);
    }

    /// <summary>Folders of use cases: two levels below Features, holding a page or a slice.</summary>
    public static IEnumerable<(string Area, string Slice, string Path)> Slices() =>
        from area in Directory.GetDirectories(Features)
        from slice in Directory.GetDirectories(area)
        where File.Exists(Path.Combine(slice, Path.GetFileName(slice) + ".cs"))
        orderby slice
        select (Path.GetFileName(area), Path.GetFileName(slice), slice);

    public static string Named(string file) => Path.GetRelativePath(Root, file).Replace('\\', '/');

    public static string Kebab(string pascal) =>
        string.Concat(pascal.Select((c, i) => char.IsUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : c.ToString()));

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "HairClinic.sln")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("HairClinic.sln was not found above the tests.");
    }
}
