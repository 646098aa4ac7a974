namespace HairClinic.Web.Data.Maps;

public sealed class StoredPageResultMap() : FencedMap<StoredPageResult>("stored_page_results")
{
    protected override void Map(EntityTypeBuilder<StoredPageResult> builder)
    {
        builder.Property(x => x.Answer).HasColumnType("jsonb");
        builder.HasIndex(x => new { x.PracticeId, x.Question });
    }
}
