using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Shell.Edits;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Features.Settings;

/// <summary>A kind of unit: a base from a workshop. Another base means another hold window, so due dates follow.</summary>
public sealed class EditUnitKind(ClinicDbFactory databases, WriteOnce writes, IClock clock)
{
    public async Task<Screen?> OpenAsync(Guid? id, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var bases = await db
            .BaseMaterials.Where(b => !b.Retired)
            .OrderBy(b => b.Name)
            .Select(b => new Choice(b.Id, b.Name))
            .ToListAsync(cancellation);
        var workshops = await db
            .Workshops.Where(w => !w.Retired)
            .OrderBy(w => w.Name)
            .Select(w => new Choice(w.Id, w.Name))
            .ToListAsync(cancellation);
        if (id is null)
            return new Screen(new Input { BaseMaterialId = bases.FirstOrDefault()?.Id ?? Guid.Empty }, bases, workshops);
        var kind = await db.UnitKinds.AsNoTracking().SingleOrDefaultAsync(k => k.Id == id, cancellation);
        return kind is null ? null : new Screen(Input.Of(kind), bases, workshops);
    }

    /// <exception cref="Refusal">The name is taken.</exception>
    /// <exception cref="OvertakenException">Someone else changed it since the form opened.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(key, nameof(EditUnitKind), input, db => WriteAsync(db, input, cancellation), cancellation);
        }
        catch (DbUpdateException e) when (Guarded.Taken(e, "unit_kinds"))
        {
            throw new Refusal("There is a kind of unit called {0} already.", input.Name);
        }
    }

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        UnitKind kind;
        if (input.Id is { } id)
        {
            kind = await db.UnitKinds.SingleAsync(k => k.Id == id, cancellation);
            Guarded.Hold(db, kind, input.Version);
            if (kind.BaseMaterialId != input.BaseMaterialId)
                db.WorkItems.Add(WorkItems.RefreshDueDates(clientId: null, clock.GetCurrentInstant()));
            kind.Edit(input.Name, input.BaseMaterialId, input.WorkshopId);
        }
        else
        {
            kind = new UnitKind(Guid.CreateVersion7(), input.Name, input.BaseMaterialId, input.WorkshopId);
            db.UnitKinds.Add(kind);
        }
        if (kind.LeadHalfDays != input.LeadHalfDays || kind.LeadNineInTenDays != input.LeadNineInTenDays)
            db.WorkItems.Add(WorkItems.Recalculate(clock.GetCurrentInstant()));
        kind.Take(input.LeadHalfDays ?? 0, input.LeadNineInTenDays ?? 0);
        if (input.Retire)
            kind.Retire();
        return new Outcome(kind.Id);
    }

    public sealed record Screen(Input Input, IReadOnlyList<Choice> Bases, IReadOnlyList<Choice> Workshops);

    public sealed record Choice(Guid Id, string Name);

    public sealed record Input : IEditable
    {
        [FromBook]
        public Guid? Id { get; set; }

        [FromBook]
        public uint Version { get; set; }

        [OfTheForm]
        public bool Retire { get; set; }

        [Field("Name")]
        public string Name { get; set; } = "";

        [Field("Base")]
        public Guid BaseMaterialId { get; set; }

        [Field("Workshop", Nothing = "workshop not known")]
        public Guid? WorkshopId { get; set; }

        /// <summary>Days from order to arrival in half of the orders.</summary>
        [Field("Half of the orders take, days")]
        public int? LeadHalfDays { get; set; } = 56;

        /// <summary>Days in nine of ten.</summary>
        [Field("Nine in ten take, days")]
        public int? LeadNineInTenDays { get; set; } = 77;

        public static Input Of(UnitKind kind) =>
            new()
            {
                Id = kind.Id,
                Version = kind.Version,
                Name = kind.Name,
                BaseMaterialId = kind.BaseMaterialId,
                WorkshopId = kind.WorkshopId,
                LeadHalfDays = kind.LeadHalfDays,
                LeadNineInTenDays = kind.LeadNineInTenDays,
            };
    }

    public sealed record Outcome(Guid UnitKindId);
}
