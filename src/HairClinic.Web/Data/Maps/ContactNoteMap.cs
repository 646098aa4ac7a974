namespace HairClinic.Web.Data.Maps;

public sealed class ContactNoteMap() : FencedMap<ContactNote>("contact_notes")
{
    protected override void Map(EntityTypeBuilder<ContactNote> builder)
    {
        builder.AddReference<ContactNote, Client>(x => x.ClientId);
        builder.HasIndex(x => new
        {
            x.PracticeId,
            x.ClientId,
            x.At,
        });
    }
}
