using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Units;

/// <summary>An old book has a bond with wrong days: they are corrected.</summary>
public sealed class CorrectBondDays(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    /// <returns>Null: no such unit, or not theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid unitId, Guid? bondId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var unit = await db.HairSystems.AsNoTracking().SingleOrDefaultAsync(u => u.Id == unitId, cancellation);
        if (unit is null)
            return null;
        var salon = await UnitSalon.LoadAsync(db, unit.PlaceSalonId, unit.ClientId, current.Person, cancellation);
        var bond = await db
            .Bonds.AsNoTracking()
            .SingleOrDefaultAsync(
                b => b.Id == bondId && b.HairSystemId == unitId && b.RemovedOn != null && b.VisitId == null,
                cancellation
            );
        return new Screen(
            unit.Serial,
            salon.DayOf(clock.GetCurrentInstant()),
            bond is null
                ? null
                : new Input
                {
                    BondId = bond.Id,
                    Version = bond.Version,
                    BondedOn = bond.AppliedOn,
                    CameOffOn = bond.RemovedOn,
                    LiftedOn = bond.Lift?.LiftedOn,
                }
        );
    }

    /// <exception cref="Refusal">The domain says no, or the bond is not there any more.</exception>
    /// <exception cref="OvertakenException">Someone changed this bond at the same moment.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(key, nameof(CorrectBondDays), input, db => WriteAsync(db, input, cancellation), cancellation);

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        var bond =
            await db.Bonds.SingleOrDefaultAsync(b => b.Id == input.BondId, cancellation)
            ?? throw new Refusal("This bond is not there any more. Open the unit again.");
        WriteOnce.ExpectVersion(db, bond, input.Version);
        var unit = await db.HairSystems.SingleAsync(u => u.Id == bond.HairSystemId, cancellation);
        var salon = await UnitSalon.LoadAsync(db, unit.PlaceSalonId, bond.ClientId, current.Person, cancellation);
        var others = await db
            .Bonds.AsNoTracking()
            .Where(b => b.Id != bond.Id && (b.ClientId == bond.ClientId || b.HairSystemId == bond.HairSystemId))
            .Select(b => new
            {
                b.HairSystemId,
                b.AppliedOn,
                b.RemovedOn,
            })
            .ToListAsync(cancellation);
        var was = bond.AppliedOn;
        bond.CorrectDays(
            input.BondedOn!.Value,
            input.CameOffOn!.Value,
            input.LiftedOn,
            others.Select(o => (o.AppliedOn, o.RemovedOn)),
            salon.DayOf(clock.GetCurrentInstant())
        );
        if (unit.Dates.FirstBondedOn == was)
            unit.CorrectFirstBondedOn(others.Where(o => o.HairSystemId == unit.Id).Select(o => o.AppliedOn).Append(bond.AppliedOn).Min());
        return new Outcome(unit.Id, bond.AppliedOn, bond.RemovedOn!.Value);
    }

    /// <param name="Start">Null where there is no such bond, or its days are those of its visits.</param>
    public sealed record Screen(string Serial, LocalDate Today, Input? Start);

    public sealed record Input
    {
        public Guid BondId { get; set; }
        public uint Version { get; set; }
        public LocalDate? BondedOn { get; set; }
        public LocalDate? CameOffOn { get; set; }

        /// <summary>Null where nobody noticed a lift.</summary>
        public LocalDate? LiftedOn { get; set; }
    }

    public sealed record Outcome(Guid UnitId, LocalDate BondedOn, LocalDate CameOffOn);
}

public sealed class CorrectBondDaysRules : AbstractValidator<CorrectBondDays.Input>
{
    public CorrectBondDaysRules()
    {
        RuleFor(x => x.BondedOn).NotNull().WithMessage("Say on which day it was bonded.");
        RuleFor(x => x.CameOffOn).NotNull().WithMessage("Say on which day it came off.");
    }
}
