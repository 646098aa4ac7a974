using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Shell.Edits;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Features.Settings;

/// <summary>A base and how long it lasts in wear.</summary>
public sealed class EditBase(ClinicDbFactory databases, WriteOnce writes)
{
    public async Task<Input?> OpenAsync(Guid? id, CancellationToken cancellation)
    {
        if (id is null)
            return new Input();
        await using var db = databases.Open();
        var material = await db.BaseMaterials.AsNoTracking().SingleOrDefaultAsync(b => b.Id == id, cancellation);
        return material is null ? null : Input.Of(material);
    }

    /// <exception cref="Refusal">The name is taken, or the life is none.</exception>
    /// <exception cref="OvertakenException">Someone else changed it since the form opened.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(key, nameof(EditBase), input, db => WriteAsync(db, input, cancellation), cancellation);
        }
        catch (DbUpdateException e) when (Guarded.Taken(e, "base_materials"))
        {
            throw new Refusal("There is a base called {0} already.", input.Name);
        }
    }

    private static async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        BaseMaterial material;
        if (input.Id is { } id)
        {
            material = await db.BaseMaterials.SingleAsync(b => b.Id == id, cancellation);
            Guarded.Hold(db, material, input.Version);
            material.Edit(input.Name, input.LifeFromDays ?? 0, input.LifeToDays ?? 0);
        }
        else
        {
            material = new BaseMaterial(Guid.CreateVersion7(), input.Name, input.LifeFromDays ?? 0, input.LifeToDays ?? 0);
            db.BaseMaterials.Add(material);
        }
        if (input.Retire)
            material.Retire();
        return new Outcome(material.Id);
    }

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

        [Field("One in ten worn out by day")]
        public int? LifeFromDays { get; set; }

        [Field("Nine in ten worn out by day")]
        public int? LifeToDays { get; set; }

        public static Input Of(BaseMaterial material) =>
            new()
            {
                Id = material.Id,
                Version = material.Version,
                Name = material.Name,
                LifeFromDays = material.LifeFromDays,
                LifeToDays = material.LifeToDays,
            };
    }

    public sealed record Outcome(Guid BaseMaterialId);
}
