namespace HairClinic.Web.Data.Maps;

public sealed class CareFactMap() : FencedMap<CareFact>("care_facts")
{
    protected override void Map(EntityTypeBuilder<CareFact> builder)
    {
        builder.ComplexProperty(x => x.Habits, h => ColumnsOf<CareHabits>(h));
        builder.HasIndex(x => new
        {
            x.PracticeId,
            x.ClientId,
            x.AsOf,
        });
    }
}
