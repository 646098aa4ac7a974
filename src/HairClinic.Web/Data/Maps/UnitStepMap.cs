using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace HairClinic.Web.Data.Maps;

public sealed class UnitStepMap() : FencedMap<UnitStep>("unit_steps")
{
    private static readonly ValueConverter<UnitSnapshot, string> AsJson = new(
        snapshot => JsonSerializer.Serialize(snapshot, JsonColumns.Options),
        json => JsonSerializer.Deserialize<UnitSnapshot>(json, JsonColumns.Options)!
    );

    protected override void Map(EntityTypeBuilder<UnitStep> builder)
    {
        builder.Property(x => x.Before).HasColumnType("jsonb").HasConversion(AsJson);
        builder.Property(x => x.After).HasColumnType("jsonb").HasConversion(AsJson);
        builder.AddReference<UnitStep, UnitStep>(x => x.CorrectsId);
        builder.HasIndex(x => new { x.PracticeId, x.HairSystemId });
    }
}
