using HairClinic.EmbeddedPostgres;
using NodaTime.Text;

namespace HairClinic.Web.Data.Work;

/// <summary>Where letters lie while no mail server is named: text files that only the program's own user may read.</summary>
/// <param name="path">The folder.</param>
/// <param name="named">It was configured by hand: its permissions stay as they are.</param>
public sealed class LetterFolder(string path, bool named, IClock clock)
{
    /// <summary>Long enough to look at letters in a trial; the links in them expire after a quarter of an hour.</summary>
    public static readonly Duration Kept = Duration.FromDays(7);

    private static readonly InstantPattern Name = InstantPattern.CreateWithInvariantCulture("uuuuMMdd'T'HHmmssfff");

    public string Folder => path;

    public async Task WriteAsync(Letter letter, Guid id, CancellationToken cancellation)
    {
        PrivateFiles.MakeFolder(Folder);
        if (!named)
            PrivateFiles.RestrictFolder(Folder);
        var file = Path.Combine(Folder, $"{Name.Format(clock.GetCurrentInstant())}-{id:N}.txt");
        await using var stream = PrivateFiles.Create(file);
        await stream.WriteAsync(Encoding.UTF8.GetBytes($"{To(letter.To)}\nSubject: {letter.Subject}\n\n{letter.Text}\n"), cancellation);
    }

    /// <returns>The newest letters first, as text.</returns>
    public async Task<IReadOnlyList<string>> ListNewestAsync(int most, CancellationToken cancellation) =>
        await Task.WhenAll(Files().OrderDescending(StringComparer.Ordinal).Take(most).Select(f => File.ReadAllTextAsync(f, cancellation)));

    /// <summary>Takes out what is older than a week.</summary>
    /// <returns>How many letters went.</returns>
    public int RemoveOld()
    {
        // A name begins with when it was written, and sorts by it.
        var oldest = Name.Format(clock.GetCurrentInstant() - Kept);
        return Remove(Files().Where(f => string.CompareOrdinal(Path.GetFileName(f), oldest) < 0));
    }

    /// <summary>Takes out every letter to these addresses.</summary>
    public int RemoveLettersTo(IReadOnlyCollection<string> addresses)
    {
        if (addresses.Count == 0)
            return 0;
        var heads = addresses.Select(To).ToHashSet(StringComparer.OrdinalIgnoreCase);
        return Remove(Files().Where(f => heads.Contains(File.ReadLines(f).FirstOrDefault() ?? "")));
    }

    private static string To(string address) => $"To: {address.Trim()}";

    private string[] Files() => Directory.Exists(Folder) ? Directory.GetFiles(Folder, "*.txt") : [];

    private static int Remove(IEnumerable<string> files)
    {
        var gone = 0;
        foreach (var file in files.ToList())
        {
            File.Delete(file);
            gone++;
        }
        return gone;
    }
}
