using System.Collections.Frozen;
using System.IO.Compression;

namespace HairClinic.Web.Accounts.Passwords;

/// <summary>Passwords that were used, and lost, so often that they are tried first. SOURCE.md says where the list is from.</summary>
public static class CommonPasswords
{
    private static readonly Lazy<FrozenSet<string>> All = new(Read);

    private static readonly Lazy<int> Longest = new(() => All.Value.Max(w => w.Length));

    public static bool Holds(string word) => All.Value.Contains(word);

    /// <summary>The longest entry of the list inside a text; null when there is none worth speaking of.</summary>
    public static string? LongestIn(string text)
    {
        const int shortest = 4;
        var lookup = All.Value.GetAlternateLookup<ReadOnlySpan<char>>();
        for (var length = Math.Min(text.Length, Longest.Value); length >= shortest; length--)
        {
            for (var start = 0; start + length <= text.Length; start++)
            {
                if (lookup.Contains(text.AsSpan(start, length)))
                    return text.Substring(start, length);
            }
        }
        return null;
    }

    private static FrozenSet<string> Read()
    {
        using var file = typeof(CommonPasswords).Assembly.GetManifestResourceStream("common-passwords.txt.gz")!;
        using var text = new StreamReader(new GZipStream(file, CompressionMode.Decompress));
        var words = new List<string>();
        while (text.ReadLine() is { } word)
            words.Add(word);
        return words.ToFrozenSet(StringComparer.Ordinal);
    }
}
