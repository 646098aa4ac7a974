using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Writes;

namespace HairClinic.Web.Features.Clients;

/// <summary>A repair of one of a client's units. It is no end of the unit's life; what is left is judged with it.</summary>
public sealed class NoteRepair(ClinicDbFactory databases, WriteOnce writes, IClock clock)
{
    /// <returns>Null: not there, or not theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var row = await db.Clients.UnmergedById(clientId).Headings(db).SingleOrDefaultAsync(cancellation);
        if (row is null)
            return null;
        var units = await db
            .HairSystems.AsNoTracking()
            .Include(u => u.Repairs)
            .Where(u => u.ClientId == clientId)
            .OrderBy(u => u.Serial)
            .ToListAsync(cancellation);
        return new Screen(
            row.Name,
            row.Code,
            clock.Today(row.Zone),
            [
                .. units
                    .Where(u => u.State is not (UnitState.Specified or UnitState.Away) && !u.State.IsInFlight() && !u.State.IsGone())
                    .Select(u => new UnitRow(u.Id, u.Serial)),
            ],
            [
                .. units
                    .SelectMany(u =>
                        u.Repairs.Where(r => r.DoneOn is not null).Select(r => new Done(u.Serial, r.DoneOn!.Value, r.Kind, r.Note))
                    )
                    .OrderByDescending(r => r.On),
            ]
        );
    }

    /// <exception cref="Refusal">The unit is not the client's, not here, or the day lies before it came.</exception>
    /// <exception cref="OvertakenException">Someone changed this unit at the same moment.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(NoteRepair),
            input,
            async db =>
            {
                var unit =
                    await db
                        .HairSystems.Include(u => u.Repairs)
                        .SingleOrDefaultAsync(u => u.Id == input.UnitId && u.ClientId == input.ClientId, cancellation)
                    ?? throw new Refusal("This unit is not among the client’s any more.");
                unit.AddRepair(key, input.On!.Value, input.Kind!.Value, input.Note);
                return new Outcome(unit.Serial);
            },
            cancellation
        );

    public sealed record Screen(string Name, string Code, LocalDate Today, IReadOnlyList<UnitRow> Units, IReadOnlyList<Done> Repairs);

    public sealed record UnitRow(Guid Id, string Serial);

    public sealed record Done(string Serial, LocalDate On, RepairKind Kind, string? Note);

    public sealed record Input
    {
        public Guid ClientId { get; set; }
        public Guid? UnitId { get; set; }
        public RepairKind? Kind { get; set; }
        public LocalDate? On { get; set; }
        public string? Note { get; set; }
    }

    public sealed record Outcome(string Serial);
}
