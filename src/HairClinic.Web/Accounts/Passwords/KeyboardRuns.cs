namespace HairClinic.Web.Accounts.Passwords;

/// <summary>Finds what fingers do by themselves: one key held, keys side by side, and straight runs such as abcd or 9876.</summary>
public static class KeyboardRuns
{
    /// <summary>Shorter runs occur in every word.</summary>
    private const int Shortest = 4;

    // Rows of the keyboards in use where the program is; each row begins a little further right than the one above.
    private static readonly (string[] Rows, double[] Starts)[] Keyboards =
    [
        (["1234567890-=", "qwertyuiop[]", "asdfghjkl;'", "zxcvbnm,./"], [0, 0.5, 0.75, 1.25]),
        (["1234567890-=", "qwertzuiop", "asdfghjkl", "yxcvbnm,.-"], [0, 0.5, 0.75, 1.25]),
        (["1234567890", "azertyuiop", "qsdfghjklm", "wxcvbn,;:!"], [0, 0.5, 0.75, 1.25]),
    ];

    private static readonly HashSet<(char, char)>[] Neighbours = [.. Keyboards.Select(k => NeighboursOn(k.Rows, k.Starts))];

    /// <returns>For each sign of the text, whether it belongs to such a run.</returns>
    public static bool[] Mark(string text)
    {
        var marked = new bool[text.Length];
        foreach (var near in Neighbours)
            Runs(text, (a, b, _) => near.Contains((a, b)), marked);
        Runs(text, (a, b, step) => b - a == step && step is -1 or 0 or 1, marked);
        return marked;
    }

    private static void Runs(string text, Func<char, char, int, bool> goesOn, bool[] marked)
    {
        for (var start = 0; start < text.Length - 1; )
        {
            var step = text[start + 1] - text[start];
            var end = start;
            while (end + 1 < text.Length && goesOn(text[end], text[end + 1], step))
                end++;
            if (end - start + 1 >= Shortest)
                Array.Fill(marked, true, start, end - start + 1);
            start = Math.Max(end, start + 1);
        }
    }

    private static HashSet<(char, char)> NeighboursOn(string[] rows, double[] starts)
    {
        var keys = rows.SelectMany((row, y) => row.Select((key, x) => (Key: key, X: x + starts[y], Y: y))).ToList();
        return
        [
            .. from a in keys
            from b in keys
            where Math.Abs(a.Y - b.Y) <= 1 && Math.Abs(a.X - b.X) <= 1 && a.Key != b.Key
            select (a.Key, b.Key),
        ];
    }
}
