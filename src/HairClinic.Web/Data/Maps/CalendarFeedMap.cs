namespace HairClinic.Web.Data.Maps;

public sealed class CalendarFeedMap() : FencedMap<CalendarFeed>("calendar_feeds")
{
    protected override void Map(EntityTypeBuilder<CalendarFeed> builder)
    {
        builder.AddReference<CalendarFeed, Client>(x => x.ClientId);
        builder.HasIndex(x => new { x.PracticeId, x.SecretHash }).IsUnique();
        builder.HasIndex(x => new { x.PracticeId, x.ClientId });
        builder.HasIndex(x => new { x.PracticeId, x.Email });
    }
}
