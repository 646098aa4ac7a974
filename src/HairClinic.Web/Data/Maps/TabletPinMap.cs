using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Data.Maps;

public sealed class TabletPinMap() : FencedMap<TabletPin>("tablet_pins")
{
    protected override void Map(EntityTypeBuilder<TabletPin> builder)
    {
        builder.AddReference<TabletPin, Tablet>(x => x.TabletId);
        builder.AddReference<TabletPin, Person>(x => x.PersonId);
        builder
            .HasIndex(x => new
            {
                x.PracticeId,
                x.TabletId,
                x.PersonId,
            })
            .IsUnique();
    }
}
