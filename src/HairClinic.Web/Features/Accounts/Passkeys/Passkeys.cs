using System.Buffers.Text;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Features.Accounts;

/// <summary>One's own passkeys: each is a device that opens by its owner's finger, face or number.</summary>
public sealed class Passkeys(CurrentAccount own, StaffSignInManager accounts, AccountNotices notices, StepUpCheck check)
{
    public const int NameLength = 60;

    /// <summary>More than anybody has devices; a list that long is one nobody looks through. Common practice, no source.</summary>
    private const int Most = 20;

    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        var user = await own.ReadAsync(cancellation);
        var passkeys = await accounts.UserManager.GetPasskeysAsync(user);
        return new Screen([
            .. passkeys
                .OrderBy(p => p.CreatedAt)
                .Select(p => new Line(Base64Url.EncodeToString(p.CredentialId), p.Name ?? "", Instant.FromDateTimeOffset(p.CreatedAt))),
        ]);
    }

    /// <returns>What to ask the browser for, as JSON.</returns>
    public async Task<string> MakeCreationOptionsAsync(CancellationToken cancellation)
    {
        var user = await own.ReadAsync(cancellation);
        return await accounts.MakePasskeyCreationOptionsAsync(
            new PasskeyUserEntity
            {
                Id = user.Id.ToString(),
                Name = user.UserName!,
                DisplayName = user.UserName!,
            }
        );
    }

    /// <exception cref="Refusal">The device's answer does not fit, or there are too many.</exception>
    public async Task AddAsync(string credential, string name, CancellationToken cancellation)
    {
        await check.RefuseUnlessFreshAsync(cancellation);
        var user = await own.ReadAsync(cancellation);
        if ((await accounts.UserManager.GetPasskeysAsync(user)).Count >= Most)
            throw new Refusal("You have {0} passkeys. Remove one first.", Most);
        if (await MadeAsync(credential) is not { } passkey)
            throw new Refusal("The device's answer does not fit. Try again.");
        passkey.Name = Named(name);
        await accounts.UserManager.AddOrUpdatePasskeyAsync(user, passkey);
        await notices.NotifyAsync(user, "A passkey was added to your sign-in.", cancellation);
    }

    public async Task RenameAsync(string id, string name, CancellationToken cancellation)
    {
        var user = await own.ReadAsync(cancellation);
        if (await FindAsync(user, id) is not { } passkey)
            return;
        passkey.Name = Named(name);
        await accounts.UserManager.AddOrUpdatePasskeyAsync(user, passkey);
    }

    public async Task RemoveAsync(string id, CancellationToken cancellation)
    {
        await check.RefuseUnlessFreshAsync(cancellation);
        var user = await own.ReadAsync(cancellation);
        if (await FindAsync(user, id) is not { } passkey)
            return;
        await accounts.UserManager.RemovePasskeyAsync(user, passkey.CredentialId);
        await own.EndOtherSessionsAndNotifyAsync(user, "A passkey was removed from your sign-in.", cancellation);
    }

    private async Task<UserPasskeyInfo?> MadeAsync(string credential)
    {
        try
        {
            var made = await accounts.PerformPasskeyAttestationAsync(credential);
            return made.Succeeded ? made.Passkey : null;
        }
        // Nobody asked, or what came back is not whole.
        catch (Exception e) when (e is InvalidOperationException or ArgumentException or PasskeyException)
        {
            return null;
        }
    }

    private async Task<UserPasskeyInfo?> FindAsync(AppUser user, string id) =>
        Base64Url.IsValid(id) ? await accounts.UserManager.GetPasskeyAsync(user, Base64Url.DecodeFromChars(id)) : null;

    private static string Named(string name) =>
        string.IsNullOrWhiteSpace(name) ? "Passkey"
        : name.Trim() is { Length: > NameLength } longer ? longer[..NameLength]
        : name.Trim();

    public sealed record Screen(IReadOnlyList<Line> All);

    public sealed record Line(string Id, string Name, Instant Since);
}
