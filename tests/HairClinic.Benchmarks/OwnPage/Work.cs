using System.Globalization;

namespace HairClinic.Benchmarks.OwnPage;

/// <summary>
/// The processor time a site and its database have used, from the system's own books. Unlike requests a second it says the
/// same on a busy machine.
/// </summary>
/// <param name="Site">Milliseconds.</param>
/// <param name="Database">Milliseconds, all its processes together.</param>
internal readonly record struct Work(double Site, double Database)
{
    // Linux counts in hundredths of a second for everybody it tells.
    private const double Tick = 10;

    public static Work Of(int site, string dataFolder)
    {
        var all = Directory
            .GetDirectories("/proc")
            .Select(f => int.TryParse(Path.GetFileName(f), CultureInfo.InvariantCulture, out var id) ? id : 0)
            .Where(id => id > 0)
            .Select(Read)
            .OfType<One>()
            .ToList();
        var server = all.FirstOrDefault(p =>
            p.Command.Split('\0')[0].EndsWith("/postgres", StringComparison.Ordinal)
            && p.Command.Contains(dataFolder + "/", StringComparison.Ordinal)
        );
        return new Work(
            all.Where(p => p.Id == site).Sum(p => p.Milliseconds),
            server is null ? 0 : all.Where(p => p.Id == server.Id || p.Parent == server.Id).Sum(p => p.Milliseconds)
        );
    }

    public static Work operator -(Work later, Work earlier) => new(later.Site - earlier.Site, later.Database - earlier.Database);

    private static One? Read(int id)
    {
        try
        {
            // After the name, which may hold blanks, come state, parent, … and as the 12th and 13th the two times.
            var stat = File.ReadAllText($"/proc/{id}/stat");
            var words = stat[(stat.LastIndexOf(')') + 2)..].Split(' ');
            var ticks = long.Parse(words[11], CultureInfo.InvariantCulture) + long.Parse(words[12], CultureInfo.InvariantCulture);
            return new One(id, int.Parse(words[1], CultureInfo.InvariantCulture), ticks * Tick, File.ReadAllText($"/proc/{id}/cmdline"));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It ended while it was looked at.
            return null;
        }
    }

    private sealed record One(int Id, int Parent, double Milliseconds, string Command);
}
