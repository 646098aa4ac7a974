using HairClinic.Web.Data;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Units;

/// <summary>What taking a step back and correcting its day read alike.</summary>
internal static class UnitCorrections
{
    /// <summary>A unit with all that its steps may touch, to be changed.</summary>
    /// <exception cref="Refusal">No such unit, or not theirs.</exception>
    public static async Task<HairSystem> LoadAsync(ClinicDb db, Guid unitId, CancellationToken cancellation) =>
        await WithSteps(db).SingleOrDefaultAsync(u => u.Id == unitId, cancellation)
        ?? throw new Refusal("You cannot open this unit: it belongs to another salon. Ask somebody there.");

    public static IQueryable<HairSystem> WithSteps(ClinicDb db) =>
        db.HairSystems.Include(u => u.Promises).Include(u => u.Arrivals).Include(u => u.Repairs).Include(u => u.Steps).AsSplitQuery();

    /// <exception cref="Refusal">No such step.</exception>
    public static UnitStep StepOf(HairSystem unit, Guid stepId) =>
        unit.Steps.FirstOrDefault(s => s.Id == stepId) ?? throw new Refusal("This entry is not there any more. Open the unit again.");

    /// <summary>Whoever may not see the borrower does nothing with the loan.</summary>
    public static Refusal LentElsewhere(HairSystem unit) =>
        new("Unit {0} was lent to a client of another salon. Ask somebody there.", unit.Serial);

    /// <summary>The loan that a step began or ended, or whose day it corrects; null where it is about none.</summary>
    /// <exception cref="Refusal">It is about one to a client who is not theirs to see.</exception>
    public static async Task<UnitLoan?> LoanAsync(ClinicDb db, HairSystem unit, UnitStep step, CancellationToken cancellation)
    {
        var about = unit.Steps.FirstOrDefault(s => s.Id == step.CorrectsId) ?? step;
        // Lost while it was lent: the loan ended with it.
        var ended = about.Kind == UnitStepKind.BackFromLoan || about is { Kind: UnitStepKind.Lost, Before.State: UnitState.Lent };
        if (!ended && about.Kind != UnitStepKind.Lent)
            return null;
        var day = unit.DayOf(about);
        // A loan has its step's id; one that came back then is the last that did.
        var loan = ended
            ? await db
                .UnitLoans.Where(l => l.HairSystemId == unit.Id && l.BackOn == day)
                .OrderByDescending(l => l.LentOn)
                .FirstOrDefaultAsync(cancellation)
            : await db.UnitLoans.SingleOrDefaultAsync(l => l.Id == about.Id, cancellation);
        return loan ?? throw LentElsewhere(unit);
    }

    public static CorrectionRight RightOf(PersonActor person, UnitStep step, Salon salon) =>
        new(salon.DayOf(step.RecordedAt), person.StaffRole is StaffRole.Owner or StaffRole.Manager);
}
