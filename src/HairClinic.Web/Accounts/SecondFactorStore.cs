using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Accounts;

/// <summary>The codes app of an account and its recovery codes.</summary>
public sealed class SecondFactorStore(UserManager<AppUser> users, AccountStore store, HashingQueue hashing, ClinicDb db, IClock clock)
{
    /// <returns>The recovery codes, shown once; null when the code does not match the secret.</returns>
    public async Task<IReadOnlyList<string>?> TurnOnAsync(AppUser user, string secret, string code, CancellationToken cancellation)
    {
        if (AppCodes.Match(secret, code, clock.GetCurrentInstant()) is not { } step)
            return null;
        await store.SetAuthenticatorKeyAsync(user, secret, cancellation);
        await db.Users.Where(u => u.Id == user.Id).ExecuteUpdateAsync(set => set.SetProperty(u => u.LastCodeStep, step), cancellation);
        var codes = await ReplaceCodesAsync(user, cancellation);
        Expect(await users.SetTwoFactorEnabledAsync(user, true));
        return codes;
    }

    public async Task TurnOffAsync(AppUser user, CancellationToken cancellation)
    {
        await store.SetAuthenticatorKeyAsync(user, "", cancellation);
        await store.ReplaceCodesAsync(user, [], cancellation);
        Expect(await users.SetTwoFactorEnabledAsync(user, false));
    }

    /// <summary>Removes all other factors: codes app, recovery codes and passkeys.</summary>
    public async Task RemoveAllAsync(AppUser user, CancellationToken cancellation)
    {
        foreach (var passkey in await users.GetPasskeysAsync(user))
            Expect(await users.RemovePasskeyAsync(user, passkey.CredentialId));
        await TurnOffAsync(user, cancellation);
    }

    /// <summary>Takes a code of the app. Each step opens once: two taps with the same code, one gets in.</summary>
    public async Task<bool> RedeemAppCodeAsync(AppUser user, string code, CancellationToken cancellation)
    {
        if (await store.GetAuthenticatorKeyAsync(user, cancellation) is not { } secret)
            return false;
        if (AppCodes.Match(secret, code, clock.GetCurrentInstant()) is not { } step)
            return false;
        return await db
                .Users.Where(u => u.Id == user.Id && (u.LastCodeStep == null || u.LastCodeStep < step))
                .ExecuteUpdateAsync(set => set.SetProperty(u => u.LastCodeStep, step), cancellation) == 1;
    }

    /// <summary>Redeems a recovery code. The account's own stamp lets one of two at once through.</summary>
    public async Task<bool> RedeemRecoveryCodeAsync(AppUser user, string code) =>
        (await users.RedeemTwoFactorRecoveryCodeAsync(user, code)).Succeeded;

    public async Task<IReadOnlyList<string>> NewRecoveryCodesAsync(AppUser user, CancellationToken cancellation)
    {
        var codes = await ReplaceCodesAsync(user, cancellation);
        Expect(await users.UpdateAsync(user));
        return codes;
    }

    private async Task<IReadOnlyList<string>> ReplaceCodesAsync(AppUser user, CancellationToken cancellation)
    {
        return await hashing.RunAsync(
            async () =>
            {
                var codes = RecoveryCodes.New();
                await store.ReplaceCodesAsync(user, codes, cancellation);
                return codes;
            },
            cancellation
        );
    }

    private static void Expect(IdentityResult result)
    {
        if (!result.Succeeded)
            throw new DbUpdateConcurrencyException(result.Errors.First().Description);
    }
}
