namespace HairClinic.Web.Features.Clients;

public sealed partial class EndNeed
{
    public sealed record Screen(string Name, string Code, LocalDate Today)
    {
        /// <summary>Since when they need no units any more; null while they do.</summary>
        public LocalDate? Ended { get; init; }

        public NeedEnd? Because { get; init; }

        /// <summary>All of theirs that are not gone.</summary>
        public IReadOnlyList<UnitLine> Units { get; init; } = [];

        /// <summary>Booked ahead, in whichever salon.</summary>
        public IReadOnlyList<VisitLine> Visits { get; init; } = [];

        /// <summary>Units of the stock that they have.</summary>
        public IReadOnlyList<UnitLink> Borrowed { get; init; } = [];

        public bool WearsBond { get; init; }

        /// <summary>The visit at which a take-down can be logged.</summary>
        public Guid? VisitToday { get; init; }

        /// <summary>They agreed that units of theirs are trained with.</summary>
        public bool TrainingAgreed { get; init; }

        public Input Start { get; init; } = new();
    }

    public sealed record UnitLine(Guid Id, string Serial, string Kind, UnitState State)
    {
        /// <summary>Something is to be chosen for it.</summary>
        public bool IsAsked => UnitAfterNeedRule.ChoicesFor(State, NeedEnd.Other).Count > 0;
    }

    public sealed record VisitLine(Instant StartsAt, string Zone, string Salon, string Service);

    public sealed record UnitLink(Guid Id, string Serial);

    public sealed record Input
    {
        public Guid ClientId { get; set; }

        /// <summary>The client's row when the form opened.</summary>
        public uint Version { get; set; }

        public NeedEnd? Because { get; set; }

        /// <summary>The day from which they need none any more.</summary>
        public LocalDate? On { get; set; }

        /// <summary>Null where none is booked.</summary>
        public bool? CallOffVisits { get; set; }

        public List<UnitInput> Units { get; set; } = [];

        /// <summary>What follows from it is chosen at once, and can be chosen otherwise.</summary>
        public void SetBecause(NeedEnd because, bool anyVisits)
        {
            Because = because;
            CallOffVisits = anyVisits && because.CallsOffVisits() ? true : null;
            foreach (var unit in Units.Where(u => because == NeedEnd.Died && u.After == UnitAfterNeed.KeptAsSpare))
                unit.After = null;
        }
    }

    public sealed record UnitInput
    {
        public Guid UnitId { get; set; }
        public UnitAfterNeed? After { get; set; }
    }

    public sealed record Back(Guid ClientId, uint Version);

    /// <param name="CalledOff">Orders that a workshop is to be told of.</param>
    public sealed record Outcome(LocalDate On, NeedEnd Because, int Visits, IReadOnlyList<ToTell> CalledOff);

    public sealed record ToTell(string Serial, string? Workshop);
}
