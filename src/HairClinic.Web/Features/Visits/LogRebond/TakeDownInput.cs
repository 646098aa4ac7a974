namespace HairClinic.Web.Features.Visits;

/// <summary>What a take-down found, as it is typed: of the bond that a new one follows, and of one that comes off alone.</summary>
public record TakeDownInput
{
    public Guid VisitId { get; set; }

    /// <summary>The bond that was on the head when the form opened.</summary>
    public Guid? WornBondId { get; set; }

    // Nothing touched is nothing said: a grade that nobody gave is null.
    public int? Shedding { get; set; }
    public int? Knots { get; set; }
    public int? Base { get; set; }
    public int? Fit { get; set; }
    public int? Hair { get; set; }
    public int? Colour { get; set; }

    /// <summary>The grades stand as they were last time, by one tap, and none was changed since.</summary>
    public bool GradesCopied { get; set; }

    /// <summary>Of a unit that is found worn out: the first day on which it looked so.</summary>
    public LocalDate? WornOutOn { get; set; }

    /// <summary>Or about when.</summary>
    public SinceWhen? WornOutSince { get; set; }

    public bool? FoundLifted { get; set; }

    /// <summary>The day an edge was noticed, or the day it came off at home.</summary>
    public LocalDate? LiftedOn { get; set; }

    /// <summary>Or about when.</summary>
    public SinceWhen? LiftedSince { get; set; }

    public LiftZone? LiftZone { get; set; }
    public RemovalReason? Because { get; set; }

    public bool CameOffByItself() => Because?.CameOffByItself() == true;

    /// <summary>A day is asked for: an edge was up, or it came off at home.</summary>
    public bool HadLifted() => FoundLifted == true || CameOffByItself();

    /// <summary>There is a unit to look at.</summary>
    public bool HasUnit() => Because != RemovalReason.LostAtHome;

    public InspectionGrades Grades() => new(Shedding, Knots, Base, Fit, Hair, Colour);

    public void SetGrades(InspectionGrades grades, bool copied)
    {
        (Shedding, Knots, Base, Fit, Hair, Colour) = (grades.Shedding, grades.Knots, grades.Base, grades.Fit, grades.Hair, grades.Colour);
        GradesCopied = copied;
    }

    /// <summary>It is found worn out, and was not when it was graded last: since when is asked.</summary>
    public bool IsNewlyWornOut(InspectionGrades? before) =>
        HasUnit()
        && Grades().IsAtLeast(InspectionGrades.PlanReplacement) == true
        && before?.IsAtLeast(InspectionGrades.PlanReplacement) != true;

    /// <exception cref="Refusal">It is not said why the bond came off.</exception>
    public TakeDown ToTakeDown() =>
        new(
            Grades(),
            FoundLifted == true && !CameOffByItself(),
            HadLifted() ? LiftedOn : null,
            HadLifted() ? LiftZone : null,
            Because ?? throw new Refusal("Say why it came off.")
        )
        {
            GradesCopied = GradesCopied,
            LiftedSince = HadLifted() ? LiftedSince : null,
            WornOutOn = WornOutOn,
            WornOutSince = WornOutSince,
        };

    /// <summary>A lift that was told before the visit and not put down again is still up.</summary>
    /// <returns>Whether there is one.</returns>
    public bool SetToldLift(Lift? told)
    {
        if (told is not { SpotFixed: false } lift)
            return false;
        (FoundLifted, LiftedOn, LiftZone, LiftedSince) = (
            true,
            lift.LiftedOn,
            lift.Zone,
            lift.LiftedOn is null ? SinceWhen.NotKnown : null
        );
        return true;
    }

    /// <summary>What a record tells of the take-down, to be logged once more.</summary>
    protected void SetFound(VisitRecord record, Bond worn)
    {
        Because = worn.RemovedBecause;
        FoundLifted = CameOffByItself() ? null : record.FoundLifted;
        (LiftedOn, LiftZone) = (record.LiftedOn, record.LiftZone);
        LiftedSince = record is { FoundLifted: true, LiftedOn: null } ? record.LiftedSince ?? SinceWhen.NotKnown : null;
        SetGrades(record.Grades, record.GradesCopied == true);
        (WornOutOn, WornOutSince) = (record.WornOutOn, record.WornOutSince);
    }
}

/// <summary>What can be told of a take-down from the form alone, where a bond is on the head.</summary>
public sealed class TakeDownRules : AbstractValidator<TakeDownInput>
{
    public TakeDownRules() => When(x => x.WornBondId is not null, AddRules);

    private void AddRules()
    {
        RuleFor(x => x.Because).NotNull().WithMessage("Say why it came off.");
        RuleFor(x => x.FoundLifted)
            .NotNull()
            .When(x => !x.CameOffByItself())
            .WithMessage("Say whether an edge was up when the client came.");
        RuleFor(x => x.LiftedOn)
            .NotNull()
            .When(x => x.CameOffByItself() && x.LiftedSince is null)
            .WithMessage("Ask since when it has been off, or say that it is not known.");
        RuleFor(x => x.LiftedOn)
            .NotNull()
            .When(x => x is { FoundLifted: true, LiftedSince: null } && !x.CameOffByItself())
            .WithMessage("Ask since when the edge has been up, or say that it is not known.");
        RuleFor(x => x.Because)
            .NotEqual(RemovalReason.Lifted)
            .When(x => x.FoundLifted == false)
            .WithMessage("If it came off because it lifted, say that an edge was up.");
        When(x => x.HasUnit(), AddGrades);
    }

    private void AddGrades()
    {
        RuleFor(x => x.Shedding).Must(Graded).WithMessage("Grades run from 0, as new, to 4, unfit.");
        RuleFor(x => x.Knots).Must(Graded).WithMessage("Grades run from 0, as new, to 4, unfit.");
        RuleFor(x => x.Base).Must(Graded).WithMessage("Grades run from 0, as new, to 4, unfit.");
        RuleFor(x => x.Fit).Must(Graded).WithMessage("Grades run from 0, as new, to 4, unfit.");
        RuleFor(x => x.Hair).Must(Graded).WithMessage("Grades run from 0, as new, to 4, unfit.");
        RuleFor(x => x.Colour).Must(Graded).WithMessage("Grades run from 0, as new, to 4, unfit.");
    }

    private static bool Graded(int? grade) => grade is null or (>= 0 and <= 4);
}
