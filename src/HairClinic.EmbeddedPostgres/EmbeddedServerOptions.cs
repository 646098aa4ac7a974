namespace HairClinic.EmbeddedPostgres;

public sealed record EmbeddedServerOptions(string DataFolder)
{
    /// <summary>Of one program: leaves room for the other roles under a server's usual 100.</summary>
    public const int MostConnections = 60;

    public PostgresSearch Search { get; init; } = PostgresSearch.FromEnvironment();

    /// <summary>False is faster and survives a killed server but not a power cut. For tests only.</summary>
    public bool Durable { get; init; } = true;

    /// <summary>The pause before a server that ended by itself is started again; it doubles with each failure, up to <see cref="LongestPause"/>.</summary>
    public TimeSpan FirstPause { get; init; } = TimeSpan.FromSeconds(0.5);

    public TimeSpan LongestPause { get; init; } = TimeSpan.FromSeconds(2);
}
