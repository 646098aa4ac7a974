namespace HairClinic.Domain.Wear.Grades;

/// <summary>How likely a row of entries on one threshold is, for each place in it where the threshold may have been passed.</summary>
internal static class EntryLikelihood
{
    /// <summary>
    /// p = last + Σ jumps[j]·a_j, with a_j the chance that the threshold was passed by the j-th look: the sum over the places, each with
    /// what was written before it and after it, gathered by a_j.
    /// </summary>
    public static double Fill(ReadOnlySpan<GradeEntry> entries, double misread, double copied, Span<double> jumps)
    {
        // Read from behind: how likely the entries from here on are, all of them after the threshold was passed …
        var after = 1.0;
        for (var j = entries.Length - 1; j >= 0; j--)
        {
            after *= Entry(entries, j, passed: true, misread, copied);
            jumps[j] = after;
        }
        // … and those before, from the front.
        var before = 1.0;
        for (var j = 0; j < entries.Length; j++)
        {
            var passedHere = before * jumps[j];
            before *= Entry(entries, j, passed: false, misread, copied);
            jumps[j] = passedHere - before * (j + 1 < entries.Length ? jumps[j + 1] : 1);
        }
        return before;
    }

    private static double Entry(ReadOnlySpan<GradeEntry> entries, int j, bool passed, double misread, double copied)
    {
        var read = entries[j].Reached == passed ? 1 - misread : misread;
        if (j == 0)
            return read;
        return (1 - copied) * read + (entries[j].Reached == entries[j - 1].Reached ? copied : 0);
    }
}
