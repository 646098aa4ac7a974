namespace HairClinic.Web.Data.Maps;

public sealed class GuardianMap() : FencedMap<Guardian>("guardians")
{
    protected override void Map(EntityTypeBuilder<Guardian> builder)
    {
        builder.AddReference<Guardian, Client>(x => x.ClientId);
        builder.HasIndex(x => new { x.PracticeId, x.ClientId });
        builder.HasIndex(x => new { x.PracticeId, x.Email });
    }
}
