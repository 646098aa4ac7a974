namespace HairClinic.Web.Data.Maps;

public sealed class KeptAnswerMap() : FencedMap<KeptAnswer>("kept_answers")
{
    protected override void Map(EntityTypeBuilder<KeptAnswer> builder)
    {
        builder.Property(x => x.Answer).HasColumnType("jsonb");
        builder.HasIndex(x => new { x.PracticeId, x.Question });
    }
}
