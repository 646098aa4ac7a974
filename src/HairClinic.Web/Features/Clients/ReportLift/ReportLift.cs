using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Writes;

namespace HairClinic.Web.Features.Clients;

/// <summary>“My bond has lifted”, told to the desk: when and where, what to do until they come, and the next free slot.</summary>
public sealed class ReportLift(ClinicDbFactory databases, WriteOnce writes, IClock clock)
{
    /// <returns>Null: not there, or not theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var row = await (
            from client in db.Clients.UnmergedById(clientId)
            join salon in db.Salons on client.HomeSalonId equals salon.Id
            select new
            {
                client.Name,
                client.Code,
                salon.Zone,
                FixLift = db
                    .ServiceKinds.Where(s => s.Purpose == ServicePurpose.FixLift && !s.Retired)
                    .OrderBy(s => s.Name)
                    .Select(s => (Guid?)s.Id)
                    .FirstOrDefault(),
                Worn = (
                    from bond in db.Bonds
                    where bond.ClientId == client.Id && bond.RemovedOn == null
                    join unit in db.HairSystems on bond.HairSystemId equals unit.Id
                    select new Worn(bond.Id, unit.Serial, bond.AppliedOn, bond.Lift)
                ).FirstOrDefault(),
            }
        )
            .AsNoTracking()
            .SingleOrDefaultAsync(cancellation);
        return row is null ? null : new Screen(row.Name, row.Code, clock.Today(row.Zone), row.Worn, row.FixLift);
    }

    /// <exception cref="Refusal">Nothing is bonded any more, a lift is noted already, or the day cannot be.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(key, nameof(ReportLift), input, db => WriteAsync(db, input, cancellation), cancellation);

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        var found = await (
            from client in db.Clients.UnmergedById(input.ClientId)
            join salon in db.Salons on client.HomeSalonId equals salon.Id
            join bond in db.Bonds on client.Id equals bond.ClientId
            where bond.Id == input.BondId
            select new { Bond = bond, salon.Zone }
        ).SingleOrDefaultAsync(cancellation);
        var now = clock.GetCurrentInstant();
        var lift = LiftReporter.Report(
            found?.Bond,
            found?.Zone ?? "Etc/UTC",
            now,
            input.LiftedOn,
            input.LiftedSince,
            input.Zone,
            input.SpotFixed == true
        );
        return new Outcome(lift);
    }

    /// <param name="FixLift">The service to book; null where the practice offers none.</param>
    public sealed record Screen(string Name, string Code, LocalDate Today, Worn? Worn, Guid? FixLift);

    public sealed record Worn(Guid BondId, string Serial, LocalDate AppliedOn, Lift? Lift);

    public sealed record Input
    {
        public Guid ClientId { get; set; }
        public Guid BondId { get; set; }

        /// <summary>The day the client noticed it.</summary>
        public LocalDate? LiftedOn { get; set; }

        /// <summary>Or about when; where they cannot say, it lies between the last day it was known sound and today.</summary>
        public SinceWhen? LiftedSince { get; set; }

        public LiftZone? Zone { get; set; }

        /// <summary>The edge was put down again without a new bond.</summary>
        public bool? SpotFixed { get; set; }
    }

    public sealed record Outcome(Lift Lift);
}
