using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Clients;

public sealed partial class NextUnit
{
    /// <param name="Plan">Null for who has never worn a unit, or wears none any more.</param>
    public sealed record Screen(Client Client, string Salon, LocalDate Today, Plan? Plan, IReadOnlyList<Draft> Drafts)
    {
        public Bond? Bond { get; init; }
        public LocalDate? NextVisit { get; init; }
        public WearLineData? Line { get; init; }
    }

    public sealed record Plan
    {
        public required ReorderOutlook Outlook { get; init; }

        /// <summary>The chance of a gap for an order placed on each of the next days, from today.</summary>
        public required IReadOnlyList<double> Curve { get; init; }

        /// <summary>What would be ordered.</summary>
        public required string KindName { get; init; }

        /// <summary>From order to arrival, with the workshop's closures: half of the orders, and nine in ten.</summary>
        public required (int Half, int NineInTen) LeadDays { get; init; }

        /// <summary>From arrival until it can be bonded.</summary>
        public required PreparationTime Preparation { get; init; }

        /// <summary>On order for so long that they are not counted on until somebody says that they are still on their way.</summary>
        public required IReadOnlyList<UnitForgotten> MayBeForgotten { get; init; }

        /// <summary>Units of this client behind the prediction, and of others.</summary>
        public required int OwnUnits { get; init; }

        public required int OtherUnits { get; init; }

        /// <summary>The last day whose records the prediction knows; null where it is what the practice's rows assume.</summary>
        public LocalDate? DataCut { get; init; }

        public required IReadOnlyList<UnitLeft> InHand { get; init; }
        public required IReadOnlyList<UnitComing> InFlight { get; init; }

        /// <summary>When the next unit is as likely as not ready, if the first were ordered today.</summary>
        public required LocalDate NextReady { get; init; }

        public required IReadOnlyList<UnitGone> GoneLately { get; init; }
        public required IReadOnlyList<RemedyEffect> Remedies { get; init; }

        /// <summary>What was changed on the last unit: the repeat order begins with it.</summary>
        public required string Note { get; init; }
    }

    public sealed record UnitLeft(string Serial, bool OnHead, LocalDate Early, LocalDate Half, LocalDate Late);

    public sealed record UnitComing(
        string Serial,
        string? Workshop,
        LocalDate? OrderedOn,
        LocalDate? FirstPromise,
        LocalDate? Promise,
        LocalDate Early,
        LocalDate Late
    );

    public sealed record UnitForgotten(string Serial, LocalDate OrderedOn);

    /// <param name="State">Lost or damaged.</param>
    public sealed record UnitGone(string Serial, UnitState State, LocalDate On);

    public sealed record Draft(Guid Id, string Serial, string? Note);

    /// <summary>A ready-made unit of nobody's in the client's salon.</summary>
    /// <param name="Then">The chance of a gap that is left once it is the client's.</param>
    public sealed record StockUnit(Guid Id, string Serial, string Kind, double Then);

    /// <param name="RushHalfDays">Where the slider for a rushed order starts.</param>
    public sealed record Tried(ClientReorderInput Case, ReorderOutlook Outlook, LeadTimePrior Lead, int RushHalfDays)
    {
        public ReorderOutlook OutlookWith(ReorderScenario what, ReorderRule rule) =>
            Case.Outlook(rule, what.ApplyTo(Case.Question, Case.Each, Lead));

        public double WorstGapChance(ReorderScenario what, ReorderRule rule) =>
            ReorderPlanner.LargerGapChance(rule, what.ApplyTo(Case.Question, Case.Each, Lead));
    }

    public sealed record Input
    {
        public Guid ClientId { get; set; }
        public string? Note { get; set; }

        /// <summary>How many drafts whoever taps has seen: where there are more by then, no other is made.</summary>
        public int Known { get; set; }

        /// <summary>How many drafts there are to be.</summary>
        public int Wanted { get; set; } = 1;
    }

    /// <param name="Serial">Of all that were drafted, one after another.</param>
    public sealed record Outcome(Guid UnitId, string Serial)
    {
        public int Units { get; init; } = 1;

        /// <summary>Somebody drafted it a moment before; this tap made none.</summary>
        public bool Already { get; init; }
    }
}
