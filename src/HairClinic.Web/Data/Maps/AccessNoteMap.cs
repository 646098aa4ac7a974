using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Data.Maps;

public sealed class AccessNoteMap() : FencedMap<AccessNote>("access_notes")
{
    protected override void Map(EntityTypeBuilder<AccessNote> builder)
    {
        builder.Property(x => x.Action).HasColumnName("deed");
        builder.HasIndex(x => new { x.PracticeId, x.Number }).IsUnique();
        builder.HasIndex(x => new
        {
            x.PracticeId,
            x.ClientId,
            x.Number,
        });
    }
}
