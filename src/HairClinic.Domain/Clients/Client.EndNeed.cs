namespace HairClinic.Domain.Clients;

// From the day their need ended they have no plan, no order and no reminder.
public sealed partial class Client
{
    /// <summary>Why they need no units any more; null while they do, and where nobody said.</summary>
    public NeedEnd? NeedEndedBecause { get; private set; }

    /// <summary>Nothing is ordered, booked or sent for them any more.</summary>
    public bool HasLeft => LeftOn is not null;

    /// <summary>They need no units any more from that day on.</summary>
    /// <exception cref="Refusal">
    /// It ended already, something is on their head or lent to them and they have not died, or the day cannot be.
    /// </exception>
    public void EndNeed(LocalDate on, NeedEnd because, NeedEndFacts facts)
    {
        if (LeftOn is { } left)
            throw new Refusal("Their need ended on {0} already.", left);
        // Nobody asks a family for a visit.
        if (because != NeedEnd.Died)
        {
            if (facts.WearsBond)
                throw new Refusal("A unit is still on their head. Ask a stylist to log the take-down first.");
            if (facts.Borrowed is { } serial)
                throw new Refusal("Unit {0} is lent to them: it has to be back first.", serial);
        }
        on.RequireReached(facts.Today);
        if (on < facts.LastOffOn)
            throw new Refusal("A unit was on their head until {0}: their need cannot have ended before.", facts.LastOffOn) { Field = "On" };
        Leave(on);
        NeedEndedBecause = because;
    }

    /// <summary>As a book has it that does not say why.</summary>
    public void Leave(LocalDate on) => LeftOn = on;

    /// <summary>They are a client again. What was called off stays so.</summary>
    /// <exception cref="Refusal">They never left.</exception>
    public void Return()
    {
        if (LeftOn is null)
            throw new Refusal("They are a client already.");
        (LeftOn, NeedEndedBecause) = (null, null);
    }

    /// <summary>Asked before anything is ordered or booked for them.</summary>
    /// <exception cref="Refusal">Their need has ended.</exception>
    public void RequireNeed() => RequireNeed(LeftOn);

    /// <inheritdoc cref="RequireNeed()"/>
    /// <param name="leftOn">The day a client's need ended, where only that was read.</param>
    public static void RequireNeed(LocalDate? leftOn)
    {
        if (leftOn is { } left)
            throw new Refusal("This client has needed no units since {0}. If they are back, say so on their card first.", left);
    }
}

/// <summary>Why a client needs no units any more.</summary>
public enum NeedEnd
{
    HairReturned,
    TryingWithout,
    MovedAway,
    Died,
    Other,
}

/// <summary>What the book knows when a need ends.</summary>
/// <param name="Today">The home salon's day.</param>
/// <param name="WearsBond">A bond is open.</param>
/// <param name="LastOffOn">The day their last bond came off; null for who never wore one.</param>
/// <param name="Borrowed">The serial of a unit that is lent to them.</param>
public sealed record NeedEndFacts(LocalDate Today, bool WearsBond, LocalDate? LastOffOn, string? Borrowed);

/// <summary>What follows from why a need ended.</summary>
public static class NeedEndExtensions
{
    /// <summary>Whoever tries without goes on opening their own page, and gets the link they ask for; for the others it is closed.</summary>
    public static bool KeepsOwnPage(this NeedEnd because) => because == NeedEnd.TryingWithout;

    /// <summary>Whether visits ahead are called off unless somebody says otherwise.</summary>
    public static bool CallsOffVisits(this NeedEnd because) => because is NeedEnd.Died or NeedEnd.MovedAway;
}
