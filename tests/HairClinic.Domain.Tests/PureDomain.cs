using System.Text.RegularExpressions;
using HairClinic.Domain.Wear;

namespace HairClinic.Domain.Tests;

/// <summary>The domain is given the time, the zone, ids and seeds; it fetches nothing itself.</summary>
public sealed partial class PureDomain
{
    [Fact]
    public void The_domain_refers_to_the_framework_NodaTime_and_MathNet_only()
    {
        var strangers = typeof(DueRule)
            .Assembly.GetReferencedAssemblies()
            .Select(assembly => assembly.Name!)
            .Where(name => name is not ("NodaTime" or "MathNet.Numerics") && !name.StartsWith("System.", StringComparison.Ordinal));

        Assert.Empty(strangers);
    }

    [Fact]
    public void No_source_of_the_domain_reads_a_clock_makes_an_id_rolls_dice_or_touches_the_machine()
    {
        var sources = Path.Combine(SolutionFolder(), "src", "HairClinic.Domain");
        var built = new[] { "bin", "obj" }.Select(folder => Path.Combine(sources, folder) + Path.DirectorySeparatorChar);
        var read = 0;
        var offenders = new List<string>();
        foreach (var file in Directory.EnumerateFiles(sources, "*.cs", SearchOption.AllDirectories))
        {
            if (built.Any(folder => file.StartsWith(folder, StringComparison.Ordinal)))
                continue;
            read++;
            var lines = File.ReadAllLines(file);
            for (var number = 0; number < lines.Length; number++)
            {
                if (Impure().Match(lines[number]) is { Success: true } found)
                    offenders.Add($"{Path.GetRelativePath(sources, file)}:{number + 1}: {found.Value}");
            }
        }

        Assert.NotEqual(0, read);
        Assert.Empty(offenders);
    }

    private static string SolutionFolder()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "HairClinic.sln")))
            folder = folder.Parent ?? throw new DirectoryNotFoundException("HairClinic.sln is in no folder above the tests.");
        return folder.FullName;
    }

    [GeneratedRegex(
        @"\b(SystemClock|Guid\.(NewGuid|CreateVersion7)|DateTime(Offset)?\.(Now|UtcNow|Today)|TimeZoneInfo\.Local"
            + @"|GetSystemDefault|CultureInfo\.Current(UI)?Culture|Random\.Shared|File\.|Console\.)|\bnew Random\("
    )]
    private static partial Regex Impure();
}
