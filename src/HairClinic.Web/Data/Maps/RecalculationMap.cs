namespace HairClinic.Web.Data.Maps;

public sealed class RecalculationMap() : FencedMap<Recalculation>("recalculations")
{
    /// <summary>Asking while one waits or runs returns that one.</summary>
    public const string OneAtATime = "ux_recalculations_one_at_a_time";

    protected override void Map(EntityTypeBuilder<Recalculation> builder)
    {
        builder.Ignore(x => x.IsOver);
        builder.AddReference<Recalculation, Person>(x => x.AskedBy);
        builder.HasIndex(x => x.PracticeId).IsUnique().HasFilter("ended_at is null").HasDatabaseName(OneAtATime);
        builder.HasIndex(x => new { x.PracticeId, x.AskedAt });
    }
}
