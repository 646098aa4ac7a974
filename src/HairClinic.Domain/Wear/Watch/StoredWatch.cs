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

    /// <summary>For each of them, the logarithm of how much likelier the records are if it got worse there (<see cref="StreamState.Profile"/>).</summary>
    public double[] Profile { get; private set; } = [];

    public double Limit { get; private set; }

    public double Statistic => Profile.Append(0).Max();

    /// <summary>It is worth looking at; below, chance alone explains it.</summary>
    public bool IsHalfwayToLimit => Statistic > Limit / 2;

    public WatchedStream Stream => new(Kind, StreamId);

    /// <param name="deliveries">Of the watched ones.</param>
    public void Record(LocalDate dataCut, LocalDate[] deliveries, StreamState state, double limit)
    {
        if (deliveries.Length != state.Profile.Count)
            throw new ArgumentException("A point of the profile for each delivery.", nameof(deliveries));
        (DataCut, Deliveries, Profile, Limit) = (dataCut, deliveries, [.. state.Profile], limit);
    }
}
