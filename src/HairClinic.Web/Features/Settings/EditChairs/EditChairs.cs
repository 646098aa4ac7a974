using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Shell.Edits;

namespace HairClinic.Web.Features.Settings;

/// <summary>The chairs of a salon, in the order the day shows them.</summary>
public sealed class EditChairs(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    /// <returns>Null where the salon is not theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid salonId, CancellationToken cancellation)
    {
        if (!MayEdit(salonId))
            return null;
        await using var db = databases.Open();
        var salon = await db
            .Salons.AsNoTracking()
            .Where(s => s.Id == salonId)
            .Select(s => new
            {
                s.Name,
                s.Version,
                Chairs = db
                    .Chairs.Where(c => c.SalonId == s.Id && !c.Retired)
                    .OrderBy(c => c.Position)
                    .Select(c => new ChairLine { Id = c.Id, Name = c.Name })
                    .ToList(),
            })
            .SingleOrDefaultAsync(cancellation);
        return salon is null
            ? null
            : new Screen(
                salon.Name,
                new Input
                {
                    SalonId = salonId,
                    Version = salon.Version,
                    Chairs = salon.Chairs,
                }
            );
    }

    /// <exception cref="Refusal">Two chairs share a name, or a chair to be taken out has visits booked.</exception>
    /// <exception cref="OvertakenException">Someone else changed the salon since the form opened.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(key, nameof(EditChairs), input, db => WriteAsync(db, input, cancellation), cancellation);
        }
        catch (DbUpdateException e) when (ConcurrentEdits.IsUniqueViolation(e, "chairs"))
        {
            throw new Refusal("Two chairs of a salon cannot share a name, even when one is no longer used.");
        }
    }

    private bool MayEdit(Guid salonId) => current.Person.StaffRole == StaffRole.Owner || current.Person.Salons.Contains(salonId);

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        if (!MayEdit(input.SalonId))
            throw new Refusal("This salon is not one of yours.");
        var salon = await db.Salons.SingleAsync(s => s.Id == input.SalonId, cancellation);
        // The list of chairs is the salon's: whoever edits it second is told.
        ConcurrentEdits.ExpectVersion(db, salon, input.Version);
        var chairs = await db.Chairs.Where(c => c.SalonId == input.SalonId && !c.Retired).ToListAsync(cancellation);
        foreach (var gone in chairs.Where(c => input.Chairs.All(l => l.Id != c.Id)))
            await TakeOutAsync(db, gone, cancellation);
        for (var i = 0; i < input.Chairs.Count; i++)
        {
            var line = input.Chairs[i];
            if (chairs.Find(c => c.Id == line.Id) is { } chair)
                chair.Edit(line.Name, i + 1);
            else
                db.Chairs.Add(new Chair(Guid.CreateVersion7(), input.SalonId, line.Name, i + 1));
        }
        return new Outcome(input.Chairs.Count);
    }

    private async Task TakeOutAsync(ClinicDb db, Chair chair, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var booked = await db.Visits.CountAsync(
            v => v.ChairId == chair.Id && v.State == VisitState.Booked && v.StartsAt > now,
            cancellation
        );
        if (booked > 0)
            throw new Refusal("Visits still booked on {1}: {0}. Move them first.", booked, chair.Name);
        chair.Retire();
    }

    public sealed record Screen(string SalonName, Input Input);

    public sealed record Input : IEditInput
    {
        [FromDatabase]
        public Guid SalonId { get; set; }

        [FromDatabase]
        public uint Version { get; set; }

        [FormOnly]
        public bool Retire { get; set; }

        [Field("Chairs", Ordered = true)]
        public List<ChairLine> Chairs { get; set; } = [];
    }

    public sealed record ChairLine : IFormRow
    {
        /// <summary>Empty for a new one.</summary>
        [FromDatabase]
        public Guid Id { get; set; }

        public string Name { get; set; } = "";

        object? IFormRow.Key => Id == Guid.Empty ? null : Id;

        string IFormRow.Describe(FieldFormatter words) => Name;
    }

    public sealed record Outcome(int Chairs);
}
