namespace HairClinic.Domain.Replay;

/// <summary>One client's past as a replay of the order days takes it: what was so whoever ordered when.</summary>
/// <param name="From">The first day that is replayed.</param>
/// <param name="Days">What each was, from the first on.</param>
/// <param name="InHouse">On the first day, the one worn first of all first.</param>
/// <param name="OnOrder">On the first day: they come when they really came.</param>
/// <param name="NextLives">Worn days that the client's later units really lasted, in the order they were worn: the next units ordered last as long.</param>
public sealed record ReplayedClient(
    LocalDate From,
    IReadOnlyList<ReplayDay> Days,
    IReadOnlyList<ReplayUnit> InHouse,
    IReadOnlyList<ReplayOrder> OnOrder,
    IReadOnlyList<int> NextLives
)
{
    /// <summary>From then on a spare for emergencies lies ready, as it really did; null where none does.</summary>
    public LocalDate? EmergencySpareFrom { get; init; }
}

/// <summary>A day as it really was.</summary>
public enum ReplayDay
{
    /// <summary>Not yet a client, not any more, or with their hair at home.</summary>
    NotWatched,

    /// <summary>A unit of their own was on the head.</summary>
    Worn,

    /// <summary>Nothing was on the head, though something lay in house: their own choice.</summary>
    Off,

    /// <summary>Something lent was on the head.</summary>
    Lent,

    /// <summary>Without hair.</summary>
    Without,
}

/// <summary>A unit of a replay.</summary>
/// <param name="Worn">Days until now.</param>
/// <param name="Life">Worn days after which it is used up, as it really was.</param>
public readonly record struct ReplayUnit(Guid UnitKindId, int Worn, int Life);

/// <param name="ReadyOn">The day it can be bonded.</param>
public readonly record struct ReplayOrder(ReplayUnit Unit, LocalDate OrderedOn, LocalDate ReadyOn);

/// <summary>How a client of a replay stands on a day: what whoever advises knows, but for <see cref="ReplayUnit.Life"/> and <see cref="ReplayOrder.ReadyOn"/>, which nobody does.</summary>
public sealed record ReplayStanding(LocalDate Day, IReadOnlyList<ReplayUnit> InHouse, IReadOnlyList<ReplayOrder> OnOrder);

/// <param name="InDays">The order can wait so long; 0 for today.</param>
/// <param name="Quantity">How many units.</param>
public readonly record struct ReplayAdvice(int InDays, int Quantity, Guid UnitKindId);

/// <summary>How orders and lives turn out that were never really placed or lived.</summary>
public interface IReplayWorld
{
    /// <summary>Calendar days from an order on that day until it can be bonded.</summary>
    int LeadDays(Guid unitKindId, LocalDate orderedOn);

    /// <summary>Worn days of a unit that no real one stands for.</summary>
    int LifeOfAnother(Guid unitKindId);
}
