using HairClinic.Web.Data.Rows;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HairClinic.Web.Data.Maps;

public sealed class SignInLinkMap : IEntityTypeConfiguration<SignInLink>
{
    public void Configure(EntityTypeBuilder<SignInLink> builder)
    {
        builder.ToTable("sign_in_links");
        builder.HasKey(x => x.TokenHash);
    }
}
