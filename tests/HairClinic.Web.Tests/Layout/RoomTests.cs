using System.Text.RegularExpressions;

namespace HairClinic.Web.Tests.Layout;

/// <summary>The rooms of the house, and which may name what of another: a wall where the compiler sets none.</summary>
public sealed partial class RoomTests
{
    private static readonly string[] Data = ["Fence", "Keys"];
    private static readonly string[] Log = [.. Data, "Data"];
    private static readonly string[] Subject = [.. Log, "AccessLog"];
    private static readonly string[] Shell = [.. Subject, "Mail", "Accounts", "Privacy", "Learning", "Ui"];
    private static readonly string[] Area = [.. Shell, "Shell"];
    private static readonly string[] Top = [.. Area, "Features"];

    /// <summary>By room, the rooms it may name; all may name Language, the domain and the embedded server. The list has no circle.</summary>
    private static readonly Dictionary<string, string[]> Allowed = new()
    {
        ["Language"] = [],
        ["Fence"] = [],
        ["Keys"] = [],
        ["Ui"] = [],
        ["Data"] = Data,
        ["AccessLog"] = Log,
        ["Mail"] = Subject,
        ["Accounts"] = Subject,
        ["Privacy"] = Subject,
        ["Learning"] = Subject,
        ["Shell"] = Shell,
        ["Features"] = Area,
        ["Demo"] = Top,
        ["Workers"] = Top,
        ["CommandLine"] = [.. Top, "Demo", "Workers"],
    };

    [Fact]
    public void No_room_names_what_stands_above_it()
    {
        var files = SourceTree
            .Files(SourceTree.Web, ".cs", ".razor")
            .Where(f => RoomOf(f) is not null && !f.Contains("/Migrations/", StringComparison.Ordinal))
            .Select(f => new Source(f, RoomOf(f)!, Comment().Replace(File.ReadAllText(f), " ")))
            .ToList();
        // A name that two rooms declare says nothing about either.
        var homes = files
            .SelectMany(f => Declared(f).Select(name => (Name: name, File: f)))
            .GroupBy(t => t.Name)
            .Where(g => g.Select(t => t.File.Room).Distinct().Count() == 1)
            .ToDictionary(g => g.Key, g => g.First().File);
        var folders = files.Select(f => NamespaceOf(f.Path)).ToHashSet();

        var offenders =
            from file in files
            from named in Plain(file, homes).Concat(Qualified(file, folders))
            where named.Room != file.Room && named.Room != "Language" && !Allowed[file.Room].Contains(named.Room)
            select $"{SourceTree.Named(file.Path)} names {named.Name} of {named.Room}";

        Assert.Empty(offenders.Distinct().Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_folder_of_the_program_is_a_room()
    {
        var rooms = Directory.GetDirectories(SourceTree.Web).Select(d => Path.GetFileName(d)!).Except(["bin", "obj", "wwwroot"]);

        Assert.Equal(Allowed.Keys.Order(StringComparer.Ordinal), rooms.Order(StringComparer.Ordinal));
    }

    private static IEnumerable<(string Room, string Name)> Plain(Source file, Dictionary<string, Source> homes)
    {
        var seen = SeenFrom(file);
        return from name in Name().Matches(file.Text).Select(m => m.Value).Distinct()
            where homes.TryGetValue(name, out var home) && seen.Contains(NamespaceOf(home.Path))
            select (homes[name].Room, name);
    }

    // As a name inside HairClinic.Web may be written from another room: Data.Books.ClientVisit.
    private static IEnumerable<(string Room, string Name)> Qualified(Source file, HashSet<string> folders) =>
        from match in Dotted().Matches(file.Text)
        where
            Allowed.ContainsKey(match.Groups[1].Value)
            && folders.Contains($"HairClinic.Web.{match.Groups[1].Value}.{match.Groups[2].Value}")
        select (match.Groups[1].Value, match.Value);

    private static HashSet<string> SeenFrom(Source file)
    {
        var seen = Using().Matches(file.Text).Select(m => m.Groups[1].Value).ToHashSet();
        var folder = file.Path.EndsWith(".razor", StringComparison.Ordinal) ? Path.GetDirectoryName(file.Path) : null;
        for (; folder is not null && folder.StartsWith(SourceTree.Web, StringComparison.Ordinal); folder = Path.GetDirectoryName(folder))
        {
            var imports = Path.Combine(folder, "_Imports.razor");
            if (File.Exists(imports))
                seen.UnionWith(Using().Matches(File.ReadAllText(imports)).Select(m => m.Groups[1].Value));
        }
        return seen;
    }

    private static string? RoomOf(string file) =>
        Path.GetRelativePath(SourceTree.Web, file).Split('/') is { Length: > 1 } parts && Allowed.ContainsKey(parts[0]) ? parts[0] : null;

    private static string NamespaceOf(string file) =>
        "HairClinic.Web." + Path.GetDirectoryName(Path.GetRelativePath(SourceTree.Web, file))!.Replace('/', '.');

    private static IEnumerable<string> Declared(Source file) =>
        file.Path.EndsWith(".razor", StringComparison.Ordinal)
            ? [Path.GetFileNameWithoutExtension(file.Path)]
            : Type().Matches(file.Text).Select(m => m.Groups[1].Value);

    private sealed record Source(string Path, string Room, string Text);

    [GeneratedRegex(@"//.*?$|/\*.*?\*/|@\*.*?\*@|""(?:\\.|[^""\\])*""", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Comment();

    [GeneratedRegex(
        @"^(?:(?:public|internal|file|sealed|static|abstract|partial|readonly)\s+)*(?:class|interface|enum|record(?:\s+(?:struct|class))?|struct)\s+([A-Z]\w*)",
        RegexOptions.Multiline
    )]
    private static partial Regex Type();

    [GeneratedRegex(@"^\s*@?using\s+(?:static\s+)?(HairClinic[\w.]+)", RegexOptions.Multiline)]
    private static partial Regex Using();

    [GeneratedRegex(@"(?<![.\w])[A-Z]\w+\b")]
    private static partial Regex Name();

    [GeneratedRegex(@"(?<![.\w])(?:Web\.)?([A-Z]\w+)\.([A-Z]\w+)\.[A-Z]\w+")]
    private static partial Regex Dotted();
}
