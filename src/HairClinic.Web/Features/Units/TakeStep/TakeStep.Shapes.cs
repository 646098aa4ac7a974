using HairClinic.Web.Data.Books;

namespace HairClinic.Web.Features.Units;

public sealed partial class TakeStep
{
    /// <param name="Client">Whose it is, or to whom it is lent or given; null for the stock.</param>
    public sealed record Screen(
        HairSystem Unit,
        string Kind,
        string Base,
        string? Workshop,
        UnitOwner? Client,
        LocalDate Today,
        IReadOnlyList<SalonChoice> Salons
    )
    {
        /// <summary>Where it stands by now, this can come next.</summary>
        public bool MayTake { get; init; }

        /// <summary>The arrival that is held against its order.</summary>
        public UnitArrival? Claim { get; init; }

        public bool SeesMoney { get; init; }

        /// <summary>Of one that is retired: what its take-downs found last.</summary>
        public LastGrades? Last { get; init; }

        public required Input Start { get; init; }
    }

    public sealed record Input
    {
        public Guid UnitId { get; set; }
        public UnitStepKind Step { get; set; }

        /// <summary>The day it happened.</summary>
        public LocalDate? On { get; set; }

        /// <summary>Of a unit that is lost: about when, where the day is not known.</summary>
        public SinceWhen? Since { get; set; }

        public Guid? SalonId { get; set; }

        /// <summary>Why, or what there is to say.</summary>
        public string? Note { get; set; }

        /// <summary>The workshop's day: of arrival, of a remake, or back from a repair.</summary>
        public LocalDate? PromisedFor { get; set; }

        /// <summary>Who said so.</summary>
        public string? SaidBy { get; set; }

        /// <summary>It arrived damaged.</summary>
        public bool? Damaged { get; set; }

        public string? Condition { get; set; }
        public bool? KindAsOrdered { get; set; }
        public bool? BaseAsOrdered { get; set; }
        public bool? PriceAsOrdered { get; set; }

        /// <summary>It was cut, washed or worn before anybody looked.</summary>
        public bool Altered { get; set; }

        public ArrivalDecision? Decision { get; set; }
        public RemakePayer? RemakePaidBy { get; set; }
        public RepairKind? Repair { get; set; }
        public string? SentTo { get; set; }
        public long? CostMinor { get; set; }
        public string Currency { get; set; } = "";

        /// <summary>Of a unit of nobody's: who gets it.</summary>
        public Guid? ClientId { get; set; }

        public LocalDate? DueBackOn { get; set; }

        /// <summary>The client takes it home.</summary>
        public bool WithClient { get; set; }

        /// <summary>Where in the salon.</summary>
        public string? Spot { get; set; }

        /// <summary>Of one that is retired: how it is. What is left open stays unknown.</summary>
        public UnitCondition EndCondition { get; set; }

        public InspectionGrades Grades { get; set; } = InspectionGrades.NotLookedAt;

        /// <summary>The grades stand as they were last time, by one tap, and none was changed since.</summary>
        public bool GradesCopied { get; set; }

        /// <summary>Of one that is worn out: the first day on which it looked so.</summary>
        public LocalDate? WornOutOn { get; set; }

        /// <summary>Or about when.</summary>
        public SinceWhen? WornOutSince { get; set; }

        public bool IsWornOut => EndCondition == UnitCondition.WornOut || Grades.IsAtLeast(InspectionGrades.PlanReplacement) == true;

        /// <summary>The day that counts: the one that was named, or the one by which it had happened.</summary>
        public LocalDate DayOf(LocalDate today) => On ?? Since?.DaysMeant(today)?.Latest ?? today;

        public UnitEndLook ToEndLook(Guid? by) =>
            new(EndCondition, by)
            {
                Grades = Grades,
                GradesCopied = Grades.AnyGiven ? GradesCopied : null,
                WornOutOn = IsWornOut ? WornOutOn : null,
                WornOutSince = IsWornOut && WornOutOn is null ? WornOutSince : null,
            };

        /// <summary>Kind, base and price were looked at and are as ordered: it is accepted.</summary>
        public void SetAllAsOrdered() =>
            (KindAsOrdered, BaseAsOrdered, PriceAsOrdered, Decision) = (true, true, true, ArrivalDecision.Accepted);

        /// <exception cref="Refusal">The decision does not follow.</exception>
        public ArrivalFindings ToFindings() =>
            new(
                KindAsOrdered == true,
                BaseAsOrdered == true,
                PriceAsOrdered == true,
                Altered,
                Decision ?? ArrivalDecision.Accepted,
                Note,
                RemakePaidBy
            );
    }

    public sealed record Outcome(Guid UnitId, string Serial, UnitState State, Guid? ClientId);
}
