using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Data.Maps;

public sealed class ClientSignInMap() : FencedMap<ClientSignIn>("client_sign_ins")
{
    protected override void Map(EntityTypeBuilder<ClientSignIn> builder)
    {
        builder.AddReference<ClientSignIn, Client>(x => x.ClientId);
        builder.HasIndex(x => new { x.PracticeId, x.ClientId });
        builder.HasIndex(x => new { x.PracticeId, x.Email });
    }
}
