using System.Diagnostics;

namespace HairClinic.Web.Shell.Logs;

/// <summary>
/// Whether the database is away. That it is lost is one line in the log, however many stumble over it, and that it is back another.
/// </summary>
public sealed class Outage
{
    // What was under way when it came back may still fail of what was.
    private static readonly TimeSpan Echo = TimeSpan.FromSeconds(5);

    private readonly Lock turn = new();
    private long? began;
    private long? ended;

    public bool Is
    {
        get
        {
            lock (turn)
                return began is not null;
        }
    }

    /// <summary>Somebody stumbled over it.</summary>
    /// <returns>Whether they are the first, and it is to be written down.</returns>
    public bool Begin()
    {
        lock (turn)
        {
            if (began is not null || ended is { } end && Stopwatch.GetElapsedTime(end) < Echo)
                return false;
            began = Stopwatch.GetTimestamp();
            return true;
        }
    }

    /// <summary>The database answers.</summary>
    /// <returns>How long it was away.</returns>
    public TimeSpan End()
    {
        lock (turn)
        {
            var took = began is { } since ? Stopwatch.GetElapsedTime(since) : TimeSpan.Zero;
            (began, ended) = (null, Stopwatch.GetTimestamp());
            return took;
        }
    }
}
