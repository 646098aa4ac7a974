using System.Buffers.Text;
using HairClinic.Web.Data;

namespace HairClinic.Web.Accounts;

/// <summary>The single-use link by which whoever reads at a client's old address confirms or denies the new one. Its secret is kept only as a hash.</summary>
public static class AddressConfirmationLinks
{
    private const int PracticeBytes = 16;
    private const int SecretBytes = 32;

    /// <returns>The token to send; the practice is in it so that the secret is looked up behind its fence.</returns>
    public static string IssueToken(ClinicDb db, OpeningAddress address, Instant now)
    {
        var secret = RandomNumberGenerator.GetBytes(SecretBytes);
        address.IssueLink(SHA256.HashData(secret), now);
        return Base64Url.EncodeToString([.. db.PracticeId.ToByteArray(), .. secret]);
    }

    /// <returns>The practice the token was made in and the hash it is found by; null when it is no such token.</returns>
    public static (Guid Practice, byte[] Hash)? ParseToken(string? token)
    {
        if (token is null || token.Length > 2 * (PracticeBytes + SecretBytes) || !Base64Url.IsValid(token))
            return null;
        var bytes = Base64Url.DecodeFromChars(token);
        return bytes.Length == PracticeBytes + SecretBytes
            ? (new Guid(bytes.AsSpan(0, PracticeBytes)), SHA256.HashData(bytes.AsSpan(PracticeBytes)))
            : null;
    }

    public static IQueryable<OpeningAddress> FindByHash(ClinicDb db, byte[] hash, Instant now) =>
        db.OpeningAddresses.Where(a => a.LinkHash == hash && a.LinkExpiresAt > now && a.EndedAt == null);
}
