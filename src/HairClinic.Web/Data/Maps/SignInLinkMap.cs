using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Data.Maps;

public sealed class SignInLinkMap : IEntityTypeConfiguration<SignInLink>
{
    public void Configure(EntityTypeBuilder<SignInLink> builder)
    {
        builder.ToTable("sign_in_links");
        builder.HasKey(x => x.TokenHash);
    }
}
