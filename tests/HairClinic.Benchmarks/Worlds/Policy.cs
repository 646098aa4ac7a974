namespace HairClinic.Benchmarks.Worlds;

/// <summary>Who says when to order and when to rebond.</summary>
/// <param name="Share">
/// Without the program: order once what is worn has lasted this share of the usual life, or is worn out, unless there is a spare or an
/// order under way. Null: as the program says.
/// </param>
internal sealed record Policy(string Name, double? Share)
{
    /// <summary>Days from bond to rebond without the program: 35 of a window's 56, and as many in proportion.</summary>
    public static int Rhythm(int material) => (int)(PracticeRows.Holds[material].High * 35 / 56);

    public static Policy Advised { get; } = new("advice", null);

    public static IReadOnlyList<Policy> Others { get; } =
    [new("half life", 0.5), new("two thirds", 2.0 / 3), new("when it sheds", double.PositiveInfinity)];

    public bool IsAdvice => Share is null;

    /// <param name="found">It was found worn out today.</param>
    public bool Orders(ClientBook client, int day, bool found)
    {
        if (client.Units.Exists(u => u.RetiredOn is null && !u.IsWorn))
            return false;
        var worn = client.Units.Find(u => u.IsWorn);
        return worn is null || found || worn.WornDays(day) >= Share * PracticeRows.UsualLives[client.Base];
    }
}
