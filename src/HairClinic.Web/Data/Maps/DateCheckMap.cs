namespace HairClinic.Web.Data.Maps;

public sealed class DateCheckMap() : FencedMap<DateCheck>("date_checks")
{
    protected override void Map(EntityTypeBuilder<DateCheck> builder)
    {
        builder.AddReference<DateCheck, HairSystem>(x => x.HairSystemId);
        builder.AddReference<DateCheck, Bond>(x => x.BondId);
        builder.AddReference<DateCheck, Workshop>(x => x.WorkshopId);
        builder.Ignore(x => x.SubjectId);
        builder.Ignore(x => x.Dates);
        builder.Ignore(x => x.IsOpen);
        // Those that wait for an answer are counted on many pages, and are few.
        builder.HasIndex(x => new { x.PracticeId, x.Kind }).HasFilter("answer is null").HasDatabaseName("ix_date_checks_open");
    }
}
