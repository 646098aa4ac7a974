using HairClinic.Web.Data.Writes;

namespace HairClinic.Web.Data.Maps;

public sealed class SealedDraftMap() : FencedMap<SealedDraft>("sealed_drafts")
{
    public const string OneEach = "ux_sealed_drafts_one_each";

    protected override void Map(EntityTypeBuilder<SealedDraft> builder)
    {
        builder.AddReference<SealedDraft, Person>(x => x.PersonId);
        builder.AddReference<SealedDraft, Client>(x => x.ClientId);
        builder
            .HasIndex(x => new
            {
                x.PracticeId,
                x.PersonId,
                x.Form,
                x.ClientId,
            })
            .IsUnique()
            .HasDatabaseName(OneEach);
    }
}
