using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Accounts;

/// <summary>Hashes passwords in one normal form, and can take as long for an unknown name as for a known one.</summary>
/// <remarks>Open, so that a test can count the checks.</remarks>
public class AccountPasswordHasher(IOptions<PasswordHasherOptions> options) : PasswordHasher<AppUser>(options)
{
    private static readonly AppUser Nobody = new();

    private readonly Lazy<string> _decoy = new(() => new PasswordHasher<AppUser>(options).HashPassword(Nobody, Guid.NewGuid().ToString()));

    public override string HashPassword(AppUser user, string password) =>
        base.HashPassword(user, PasswordRule.Normalize(password) ?? throw new ArgumentException(PasswordRule.Unkept, nameof(password)));

    public override PasswordVerificationResult VerifyHashedPassword(AppUser user, string hashedPassword, string providedPassword) =>
        base.VerifyHashedPassword(user, hashedPassword, PasswordRule.Normalize(providedPassword) ?? "");

    /// <summary>Does the work of a check without a result: for unknown names and accounts without a password.</summary>
    public void SimulateVerification(string password) => VerifyHashedPassword(Nobody, _decoy.Value, password);
}
