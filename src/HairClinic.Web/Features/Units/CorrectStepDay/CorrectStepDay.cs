using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Units;

/// <summary>A step happened on another day than was written: the day is corrected, whatever came after it.</summary>
public sealed class CorrectStepDay(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    /// <returns>Null: no such unit, or not theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid unitId, Guid? stepId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var unit = await UnitCorrections.WithSteps(db).AsNoTracking().SingleOrDefaultAsync(u => u.Id == unitId, cancellation);
        if (unit is null)
            return null;
        var salon = await UnitSalon.LoadAsync(db, unit.PlaceSalonId, unit.ClientId, current.Person, cancellation);
        var screen = new Screen(unit.Serial, salon.DayOf(clock.GetCurrentInstant()), null);
        if (unit.Steps.FirstOrDefault(s => s.Id == stepId && s.Stands && s.CorrectsId is null) is not { } step)
            return screen;
        var order = await OrderOfAsync(db, unit, step, cancellation);
        return screen with { Of = new(step.Id, step.Kind, unit.DayOf(step), order is { UnitCount: > 1 } ? order.Number : null) };
    }

    /// <exception cref="Refusal">The domain says no, or the step is not there any more.</exception>
    /// <exception cref="OvertakenException">Someone changed this unit at the same moment.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(key, nameof(CorrectStepDay), input, db => WriteAsync(db, input, cancellation), cancellation);

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        await WriteLock.LockAsync(db, nameof(TakeStep), input.UnitId, cancellation);
        var unit = await UnitCorrections.LoadAsync(db, input.UnitId, cancellation);
        var step = UnitCorrections.StepOf(unit, input.StepId);
        var salon = await UnitSalon.LoadAsync(db, unit.PlaceSalonId, unit.ClientId, current.Person, cancellation);
        var now = clock.GetCurrentInstant();
        var (from, to) = (unit.DayOf(step), input.On!.Value);
        List<(HairSystem Unit, UnitStep Step)> lines = [(unit, step)];
        if (await OrderOfAsync(db, unit, step, cancellation) is { } order)
        {
            var promiseId = PromiseOf(unit, step);
            order.CorrectDay(step.Kind, promiseId, to, salon.DayOf(now));
            lines.AddRange(await OthersAsync(db, order, unit, (step.Kind, from, promiseId), cancellation));
        }
        foreach (var (line, its) in lines)
        {
            line.CorrectDay(
                its,
                to,
                UnitCorrections.RightOf(current.Person, its, salon),
                await OnHeadAsync(db, line.Id, cancellation),
                new UnitStepEntry(Guid.CreateVersion7(), salon.DayOf(now), now, current.Actor.Id, Note: input.Because),
                await UnitCorrections.LoanAsync(db, line, its, cancellation)
            );
            db.Entry(line).Property(u => u.State).IsModified = true;
        }
        if (step.Kind is UnitStepKind.Ordered or UnitStepKind.Arrived)
            await OrderDateChecker.AskAsync(db, [.. lines.Select(l => l.Unit)], salon.DayOf(now), cancellation);
        return new Outcome(unit.Serial, step.Kind, to);
    }

    /// <summary>The order that has this day for all its lines; null where the unit has it for itself.</summary>
    private static async Task<WorkshopOrder?> OrderOfAsync(ClinicDb db, HairSystem unit, UnitStep step, CancellationToken cancellation)
    {
        if (unit.OrderId is not { } orderId || step.Kind > UnitStepKind.Shipped)
            return null;
        var order = await db.WorkshopOrders.Include(o => o.Promises).SingleAsync(o => o.Id == orderId, cancellation);
        return order.DayOf(step.Kind, PromiseOf(unit, step)) == unit.DayOf(step) ? order : null;
    }

    private static async Task<IReadOnlyList<(HairSystem Unit, UnitStep Step)>> OthersAsync(
        ClinicDb db,
        WorkshopOrder order,
        HairSystem unit,
        (UnitStepKind Kind, LocalDate From, Guid? PromiseId) what,
        CancellationToken cancellation
    )
    {
        var units = await UnitCorrections
            .WithSteps(db)
            .Where(u => u.OrderId == order.Id && u.Id != unit.Id)
            .OrderBy(u => u.Id)
            .ToListAsync(cancellation);
        if (units.Count + 1 < order.UnitCount)
            throw new Refusal("Order {0} has units that are not yours to see. Ask someone who sees them all.", order.Number);
        return
        [
            .. from line in units
            let its = line.Steps.FirstOrDefault(s =>
                s.Stands && s.Kind == what.Kind && line.DayOf(s) == what.From && PromiseOf(line, s) == what.PromiseId
            )
            where its is not null
            select (line, its),
        ];
    }

    private static Guid? PromiseOf(HairSystem unit, UnitStep step) => unit.Promises.FirstOrDefault(p => p.Id == step.Id)?.OrderPromiseId;

    private static async Task<IReadOnlyList<(LocalDate On, LocalDate? Off)>> OnHeadAsync(
        ClinicDb db,
        Guid unitId,
        CancellationToken cancellation
    ) =>
        [
            .. (
                await db.Bonds.Where(b => b.HairSystemId == unitId).Select(b => new { b.AppliedOn, b.RemovedOn }).ToListAsync(cancellation)
            ).Select(b => (b.AppliedOn, b.RemovedOn)),
        ];

    /// <param name="Of">Null where no such step stands.</param>
    public sealed record Screen(string Serial, LocalDate Today, StepLine? Of);

    /// <param name="On">The day it has now.</param>
    /// <param name="OfOrder">The order whose other units have the day from it, and change with it; null where there is none.</param>
    public sealed record StepLine(Guid Id, UnitStepKind Kind, LocalDate On, string? OfOrder);

    public sealed record Input
    {
        public Guid UnitId { get; set; }
        public Guid StepId { get; set; }
        public LocalDate? On { get; set; }
        public string Because { get; set; } = "";
    }

    public sealed record Outcome(string Serial, UnitStepKind Kind, LocalDate On);
}

public sealed class CorrectStepDayRules : AbstractValidator<CorrectStepDay.Input>
{
    public CorrectStepDayRules()
    {
        RuleFor(x => x.On).NotNull().WithMessage("Say on which day it was.");
        RuleFor(x => x.Because)
            .NotEmpty()
            .WithMessage("Say what was wrong with it.")
            .MaximumLength(500)
            .WithMessage("A note has at most 500 letters.");
    }
}
