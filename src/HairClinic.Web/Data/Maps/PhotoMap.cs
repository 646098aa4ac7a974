namespace HairClinic.Web.Data.Maps;

public sealed class PhotoMap() : FencedMap<Photo>("photos")
{
    protected override void Map(EntityTypeBuilder<Photo> builder)
    {
        builder.AddReference<Photo, Client>(x => x.ClientId);
        builder.AddReference<Photo, Person>(x => x.AddedBy);
        builder.AddReference<Photo, HairSystem>(x => x.HairSystemId);
        builder.AddReference<Photo, Visit>(x => x.VisitId);
        builder.HasIndex(x => new
        {
            x.PracticeId,
            x.ClientId,
            x.AddedAt,
        });
    }
}
