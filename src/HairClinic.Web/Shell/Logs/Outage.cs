using System.Diagnostics;

namespace HairClinic.Web.Shell.Logs;

/// <summary>
/// Whether the database is away. That it is lost is one line in the log, however many stumble over it, and that it is back another.
/// </summary>
public sealed class Outage
{
    // What was under way when it came back may still fail of what was.
    private static readonly TimeSpan Echo = TimeSpan.FromSeconds(5);

    private readonly Lock _turn = new();
    private long? _began;
    private long? _ended;

    public bool Is
    {
        get
        {
            lock (_turn)
                return _began is not null;
        }
    }

    /// <summary>Somebody stumbled over it.</summary>
    /// <returns>Whether they are the first, and it is to be written down.</returns>
    public bool Begin()
    {
        lock (_turn)
        {
            if (_began is not null || _ended is { } end && Stopwatch.GetElapsedTime(end) < Echo)
                return false;
            _began = Stopwatch.GetTimestamp();
            return true;
        }
    }

    /// <summary>The database answers.</summary>
    /// <returns>How long it was away.</returns>
    public TimeSpan End()
    {
        lock (_turn)
        {
            var took = _began is { } since ? Stopwatch.GetElapsedTime(since) : TimeSpan.Zero;
            (_began, _ended) = (null, Stopwatch.GetTimestamp());
            return took;
        }
    }
}
