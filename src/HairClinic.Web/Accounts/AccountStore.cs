using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;

namespace HairClinic.Web.Accounts;

/// <summary>
/// Accounts as Identity keeps them, but what proves a person is not readable in the database: the secret of a codes app is sealed, for
/// that account only, and of recovery codes a salted slow hash is kept.
/// </summary>
public sealed class AccountStore(ClinicDb db, IDataProtectionProvider protection, IdentityErrorDescriber? describer = null)
    : UserOnlyStore<
        AppUser,
        ClinicDb,
        Guid,
        IdentityUserClaim<Guid>,
        IdentityUserLogin<Guid>,
        IdentityUserToken<Guid>,
        IdentityUserPasskey<Guid>
    >(db, describer)
{
    /// <summary>Codes hold 80 random bits, and the salt is the account's own: one slow hash a try is enough.</summary>
    private const int Rounds = 100_000;

    private const char Between = ';';

    public override async Task SetAuthenticatorKeyAsync(AppUser user, string key, CancellationToken cancellationToken) =>
        await base.SetAuthenticatorKeyAsync(user, key.Length == 0 ? "" : Protector(user).Protect(key), cancellationToken);

    /// <returns>Null as well where it cannot be unsealed: then the codes app has to be set up again.</returns>
    public override async Task<string?> GetAuthenticatorKeyAsync(AppUser user, CancellationToken cancellationToken)
    {
        var kept = await base.GetAuthenticatorKeyAsync(user, cancellationToken);
        try
        {
            return string.IsNullOrEmpty(kept) ? null : Protector(user).Unprotect(kept);
        }
        catch (CryptographicException)
        {
            return null;
        }
    }

    public override Task ReplaceCodesAsync(AppUser user, IEnumerable<string> recoveryCodes, CancellationToken cancellationToken) =>
        base.ReplaceCodesAsync(user, recoveryCodes.Select(code => Hash(user, code)), cancellationToken);

    public override async Task<bool> RedeemCodeAsync(AppUser user, string code, CancellationToken cancellationToken)
    {
        if (!RecoveryCodes.HasCodeLength(code))
            return false;
        var kept = (await GetTokenAsync(user, "[AspNetUserStore]", "RecoveryCodes", cancellationToken) ?? "").Split(
            Between,
            StringSplitOptions.RemoveEmptyEntries
        );
        var typed = Hash(user, code);
        var left = kept.Where(hash =>
            !CryptographicOperations.FixedTimeEquals(Convert.FromBase64String(hash), Convert.FromBase64String(typed))
        );
        var rest = left.ToList();
        if (rest.Count == kept.Length)
            return false;
        // Already hashed: past this class's own hashing.
        await base.ReplaceCodesAsync(user, rest, cancellationToken);
        return true;
    }

    private IDataProtector Protector(AppUser user) => protection.CreateProtector("codes app", user.Id.ToString());

    private static string Hash(AppUser user, string code) =>
        Convert.ToBase64String(
            Rfc2898DeriveBytes.Pbkdf2(RecoveryCodes.Normalize(code), user.Id.ToByteArray(), Rounds, HashAlgorithmName.SHA512, 32)
        );
}
