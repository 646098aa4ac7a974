namespace HairClinic.Domain.Wear.Watch;

/// <summary>How a stream stood when it was last watched, as its chart shows it; while an alarm is open it stays as it was when that was raised.</summary>
public sealed class StoredWatch : PracticeOwned
{
    private StoredWatch() { }

    public StoredWatch(Guid id, WatchedStream stream) => (Id, Kind, StreamId) = (id, stream.Kind, stream.Id);

    public WatchedStreamKind Kind { get; private set; }

    /// <summary>The workshop's, product's or lot's id.</summary>
    public Guid StreamId { get; private set; }

    /// <summary>The last day whose records it knew.</summary>
    public LocalDate DataCut { get; private set; }

    /// <summary>Of the units (or bonds) that are watched, in order.</summary>
    public LocalDate[] Deliveries { get; private set; } = [];

    /// <summary>The CUSUM after each of them.</summary>
    public double[] Path { get; private set; } = [];

    public double Limit { get; private set; }

    public double Statistic => Path is [.., var last] ? last : 0;

    public WatchedStream Stream => new(Kind, StreamId);

    /// <param name="deliveries">Of the watched ones.</param>
    public void Record(LocalDate dataCut, LocalDate[] deliveries, StreamState state, double limit)
    {
        if (deliveries.Length != state.Path.Count)
            throw new ArgumentException("A point of the path for each delivery.", nameof(deliveries));
        (DataCut, Deliveries, Path, Limit) = (dataCut, deliveries, [.. state.Path], limit);
    }
}
