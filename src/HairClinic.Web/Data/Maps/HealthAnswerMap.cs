namespace HairClinic.Web.Data.Maps;

public sealed class HealthAnswerMap() : FencedMap<HealthAnswer>("health_answers")
{
    protected override void Map(EntityTypeBuilder<HealthAnswer> builder)
    {
        builder.AddReference<HealthAnswer, Client>(x => x.ClientId);
        builder.AddReference<HealthAnswer, Person>(x => x.AnsweredBy);
        builder.HasIndex(x => new
        {
            x.PracticeId,
            x.ClientId,
            x.SavedAt,
        });
    }
}
