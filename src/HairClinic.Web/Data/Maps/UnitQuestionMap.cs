namespace HairClinic.Web.Data.Maps;

public sealed class UnitQuestionMap() : FencedMap<UnitQuestion>("unit_questions")
{
    protected override void Map(EntityTypeBuilder<UnitQuestion> builder)
    {
        builder.AddReference<UnitQuestion, HairSystem>(x => x.HairSystemId);
    }
}
