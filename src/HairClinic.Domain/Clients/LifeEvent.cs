namespace HairClinic.Domain.Clients;

/// <summary>Dates in a client's life that the schedule respects.</summary>
/// <remarks>
/// A rebond is pulled ahead of a celebration or a journey that the bond may not last to. Before an operation, a scan or a treatment the
/// bond comes off, and none is made until a person records that bonding may begin again (<see cref="BondingPause"/>).
/// </remarks>
public sealed class LifeEvent : PracticeOwned
{
    private LifeEvent() { }

    /// <param name="away">Whether the client cannot come on these days.</param>
    /// <exception cref="Refusal">The event ends before it starts.</exception>
    public LifeEvent(Guid id, Guid clientId, LifeEventKind kind, LocalDate from, LocalDate to, bool away)
    {
        if (to < from)
            throw new Refusal("The event ends before it starts.");
        Id = id;
        ClientId = clientId;
        Kind = kind;
        From = from;
        To = to;
        Away = away;
    }

    public Guid ClientId { get; private set; }
    public LifeEventKind Kind { get; private set; }
    public LocalDate From { get; private set; }

    /// <summary>Last day of it, included.</summary>
    public LocalDate To { get; private set; }

    public bool Away { get; private set; }

    /// <summary>
    /// The first day on which a bond may be made again, as a person recorded it; null until then, however long the event is over. Only
    /// where <see cref="PausesBonding"/>.
    /// </summary>
    public LocalDate? BondingAgainFrom { get; private set; }

    /// <summary>Who recorded it.</summary>
    public Guid? BondingAgainBy { get; private set; }

    /// <summary>The bond comes off before it, and none is made until a person says so.</summary>
    public bool PausesBonding => Kind.PausesBonding();

    /// <summary>Whether it keeps bonds from being made on that day: it has begun, and bonding has not been allowed again.</summary>
    public bool KeepsFromBondingOn(LocalDate day) => PausesBonding && day >= From && !(BondingAgainFrom <= day);

    /// <summary>A person has made sure that bonding is all right again. Recording it once more replaces the day.</summary>
    /// <param name="from">The first day on which a bond may be made.</param>
    /// <exception cref="Refusal">The event does not keep from bonding, or begins after that day.</exception>
    public void AllowBondingAgain(LocalDate from, Guid? by)
    {
        if (!PausesBonding)
            throw new Refusal("This event does not keep from bonding.");
        if (from < From)
            throw new Refusal("Bonding cannot begin again before the event has begun, on {0}.", From);
        (BondingAgainFrom, BondingAgainBy) = (from, by);
    }
}

public enum LifeEventKind
{
    Celebration,
    Travel,
    Operation,
    Scan,
    Treatment,

    /// <summary>Counts as a celebration.</summary>
    Other,
}

public static class LifeEventKindExtensions
{
    /// <summary>Whether the bond comes off before it.</summary>
    public static bool PausesBonding(this LifeEventKind kind) =>
        kind is LifeEventKind.Operation or LifeEventKind.Scan or LifeEventKind.Treatment;
}
