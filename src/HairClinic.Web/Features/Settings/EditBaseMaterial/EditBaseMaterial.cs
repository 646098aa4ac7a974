using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Shell.Edits;

namespace HairClinic.Web.Features.Settings;

/// <summary>A base and how long it lasts in wear.</summary>
public sealed class EditBaseMaterial(ClinicDbFactory databases, WriteOnce writes)
    : RowEditor<BaseMaterial, EditBaseMaterial.Input>(databases, writes)
{
    public async Task<Input?> OpenAsync(Guid? id, CancellationToken cancellation)
    {
        if (id is null)
            return new Input();
        await using var db = Databases.Open();
        return await ReadAsync(db, id.Value, cancellation);
    }

    protected override IQueryable<BaseMaterial> Rows(ClinicDb db) => db.BaseMaterials;

    protected override Input Read(BaseMaterial row) => Input.From(row);

    protected override BaseMaterial Make(Input input) =>
        new(Guid.CreateVersion7(), input.Name, input.LifeFromDays ?? 0, input.LifeToDays ?? 0);

    protected override void Write(ClinicDb db, BaseMaterial row, Input input, bool isNew)
    {
        row.Edit(input.Name, input.LifeFromDays ?? 0, input.LifeToDays ?? 0);
        if (input.Retire)
            row.Retire();
    }

    protected override Refusal? TwiceBy(DbUpdateException e, Input input) =>
        ConcurrentEdits.IsUniqueViolation(e, "base_materials") ? new Refusal("There is a base called {0} already.", input.Name) : null;

    public sealed record Input : RowInput
    {
        [Field("Name")]
        public string Name { get; set; } = "";

        [Field("One in ten worn out by day")]
        public int? LifeFromDays { get; set; }

        [Field("Nine in ten worn out by day")]
        public int? LifeToDays { get; set; }

        public static Input From(BaseMaterial material) =>
            new()
            {
                Name = material.Name,
                LifeFromDays = material.LifeFromDays,
                LifeToDays = material.LifeToDays,
            };
    }
}
