using HairClinic.Web.Data.Rows;
using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace HairClinic.Web.Data.Maps;

/// <summary>Table names for the sign-in tables, which come with names of their own.</summary>
public static class AccountMaps
{
    public static void Apply(ModelBuilder builder)
    {
        builder.Entity<AppUser>(user =>
        {
            user.ToTable("users");
            user.HasIndex(x => x.NormalizedEmail).HasDatabaseName("ix_users_normalized_email");
            user.HasIndex(x => x.NormalizedUserName).IsUnique().HasDatabaseName("ux_users_normalized_user_name");
            user.HasIndex(x => new { x.PracticeId, x.PersonId }).IsUnique();
            // Counted by UPDATEs of their own: a save of the whole account must not bring back what it read before they were.
            foreach (var counted in new[] { nameof(AppUser.AccessFailedCount), nameof(AppUser.LockoutEnd), nameof(AppUser.LastCodeStep) })
                user.Property(counted).Metadata.SetAfterSaveBehavior(PropertySaveBehavior.Ignore);
        });
        builder.Entity<IdentityUserClaim<Guid>>().ToTable("user_claims");
        builder.Entity<IdentityUserLogin<Guid>>().ToTable("user_logins");
        builder.Entity<IdentityUserToken<Guid>>().ToTable("user_tokens");
        builder.Entity<IdentityUserPasskey<Guid>>().ToTable("user_passkeys");
        builder.Entity<DataProtectionKey>().ToTable("data_protection_keys");
    }
}
