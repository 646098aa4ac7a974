namespace HairClinic.Web.Data.Maps;

public sealed class VisitMap() : FencedMap<Visit>("visits")
{
    /// <summary>A client is in one place at a time.</summary>
    public const string ClientOnce = "ex_visits_client";

    protected override void Map(EntityTypeBuilder<Visit> builder)
    {
        builder.ToTable(t => t.HasCheckConstraint("ck_visits_ends_after_start", "ends_at > starts_at"));
        builder.AddReference<Visit, Client>(x => x.ClientId);
        builder.AddReference<Visit, Salon>(x => x.SalonId);
        builder.AddReference<Visit, ServiceKind>(x => x.ServiceKindId);
        builder.AddReference<Visit, Chair>(x => x.ChairId);
        builder.AddReference<Visit, Person>(x => x.PersonId);
        builder.HasIndex(x => new
        {
            x.PracticeId,
            x.SalonId,
            x.Day,
        });
        builder.HasIndex(x => new
        {
            x.PracticeId,
            x.ChairId,
            x.StartsAt,
        });
        builder.HasIndex(x => new
        {
            x.PracticeId,
            x.ClientId,
            x.StartsAt,
        });
        builder.HasIndex(x => new { x.PracticeId, x.BookKey }).IsUnique().HasFilter("book_key is not null");
        builder.AddChildren(x => x.Segments, (VisitSegment s) => s.VisitId);
        builder
            .HasOne(x => x.Record)
            .WithOne()
            .HasForeignKey<VisitRecord>(r => new { r.PracticeId, r.VisitId })
            .OnDelete(DeleteBehavior.NoAction);
    }
}
