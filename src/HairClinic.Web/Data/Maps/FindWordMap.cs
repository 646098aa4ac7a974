namespace HairClinic.Web.Data.Maps;

public sealed class FindWordMap() : FencedMap<FindWord>("find_words")
{
    protected override void Map(EntityTypeBuilder<FindWord> builder)
    {
        builder.Property(x => x.Word).UseCollation("C");
        builder.HasIndex(x => new { x.PracticeId, x.Word });
        builder.HasIndex(x => new { x.PracticeId, x.SubjectId });
    }
}
