using HairClinic.Domain.Wear.Watch;

namespace HairClinic.Web.Data.Maps;

public sealed class WatchAlarmMap() : FencedMap<WatchAlarm>("watch_alarms")
{
    /// <summary>While one is open its stream raises no other.</summary>
    public const string OneOpen = "ux_watch_alarms_one_open";

    protected override void Map(EntityTypeBuilder<WatchAlarm> builder)
    {
        builder.Ignore(x => x.IsOpen);
        builder.Ignore(x => x.Stream);
        builder.AddReference<WatchAlarm, Person>(x => x.ClosedBy);
        builder
            .HasIndex(x => new
            {
                x.PracticeId,
                x.Kind,
                x.StreamId,
            })
            .IsUnique()
            .HasFilter("\"end\" is null")
            .HasDatabaseName(OneOpen);
    }
}
