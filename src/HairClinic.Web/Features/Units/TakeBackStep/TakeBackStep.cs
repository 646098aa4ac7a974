using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Units;

/// <summary>Takes the last step of a unit back: the unit is as before it, and the step stays with the reason.</summary>
public sealed class TakeBackStep(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    /// <returns>Null: no such unit, or not theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid unitId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var unit = await db.HairSystems.AsNoTracking().Include(u => u.Steps).SingleOrDefaultAsync(u => u.Id == unitId, cancellation);
        if (unit is null)
            return null;
        var salon = await UnitSalon.LoadAsync(db, unit.PlaceSalonId, unit.ClientId, current.Person, cancellation);
        return new Screen(unit.Serial, salon.DayOf(clock.GetCurrentInstant()), LastOf(unit));
    }

    /// <exception cref="Refusal">It is not the last any more, or not theirs to take back.</exception>
    /// <exception cref="OvertakenException">Someone changed this unit at the same moment.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(key, nameof(TakeBackStep), input, db => WriteAsync(db, key, input, cancellation), cancellation);

    private async Task<Outcome> WriteAsync(ClinicDb db, Guid key, Input input, CancellationToken cancellation)
    {
        await WriteLock.LockAsync(db, nameof(TakeStep), input.UnitId, cancellation);
        var unit = await UnitCorrections.LoadAsync(db, input.UnitId, cancellation);
        var step = UnitCorrections.StepOf(unit, input.StepId);
        var salon = await UnitSalon.LoadAsync(db, unit.PlaceSalonId, unit.ClientId, current.Person, cancellation);
        var now = clock.GetCurrentInstant();
        var loan = await UnitCorrections.LoanAsync(db, unit, step, cancellation);
        unit.TakeBack(
            step,
            UnitCorrections.RightOf(current.Person, step, salon),
            new UnitStepEntry(key, salon.DayOf(now), now, current.Actor.Id, Note: input.Because),
            loan
        );
        if (step.Kind == UnitStepKind.Lent && loan is not null)
            db.UnitLoans.Remove(loan);
        if (step is { Kind: UnitStepKind.Ordered, After.OrderId: { } orderId })
            (await db.WorkshopOrders.SingleAsync(o => o.Id == orderId, cancellation)).DropUnit();
        db.Entry(unit).Property(u => u.State).IsModified = true;
        return new Outcome(unit.Serial, unit.State);
    }

    private static UnitStep? LastOf(HairSystem unit) =>
        unit.Steps.Where(s => s.Stands).OrderBy(s => s.RecordedAt).ThenBy(s => s.Kind).LastOrDefault();

    /// <param name="Last">The last step that stands; null where there is none.</param>
    public sealed record Screen(string Serial, LocalDate Today, UnitStep? Last);

    public sealed record Input
    {
        public Guid UnitId { get; set; }
        public Guid StepId { get; set; }
        public string Because { get; set; } = "";
    }

    public sealed record Outcome(string Serial, UnitState State);
}

public sealed class TakeBackStepRules : AbstractValidator<TakeBackStep.Input>
{
    public TakeBackStepRules() =>
        RuleFor(x => x.Because)
            .NotEmpty()
            .WithMessage("Say what was wrong with it.")
            .MaximumLength(500)
            .WithMessage("A note has at most 500 letters.");
}
