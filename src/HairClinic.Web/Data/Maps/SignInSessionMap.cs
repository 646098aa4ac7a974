using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Data.Maps;

public sealed class SignInSessionMap : IEntityTypeConfiguration<SignInSession>
{
    public void Configure(EntityTypeBuilder<SignInSession> builder)
    {
        builder.ToTable("sign_in_sessions");
        builder.HasKey(x => x.Id);
        builder.Property(x => x.Id).ValueGeneratedNever();
        builder.HasOne<AppUser>().WithMany().HasForeignKey(x => x.UserId).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<SignInSession>().WithMany().HasForeignKey(x => x.FullId).OnDelete(DeleteBehavior.Cascade);
        builder.HasIndex(x => new { x.UserId, x.CreatedAt });
        builder.HasIndex(x => x.TabletId);
    }
}
