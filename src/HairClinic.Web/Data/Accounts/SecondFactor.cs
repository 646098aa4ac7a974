using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Data.Accounts;

/// <summary>The codes app of an account and its recovery codes.</summary>
public sealed class SecondFactor(UserManager<AppUser> users, AccountStore store, ClinicDb db, IClock clock)
{
    /// <returns>The recovery codes, told once; null when the code does not fit the secret.</returns>
    public async Task<IReadOnlyList<string>?> TurnOnAsync(AppUser user, string secret, string code, CancellationToken cancellation)
    {
        if (Totp.Match(secret, code, clock.GetCurrentInstant()) is not { } step)
            return null;
        await store.SetAuthenticatorKeyAsync(user, secret, cancellation);
        user.LastCodeStep = step;
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

    /// <summary>Takes a code of the app. Each step opens once: two taps with the same code, one gets in.</summary>
    public async Task<bool> TakeCodeAsync(AppUser user, string code, CancellationToken cancellation)
    {
        if (await store.GetAuthenticatorKeyAsync(user, cancellation) is not { } secret)
            return false;
        if (Totp.Match(secret, code, clock.GetCurrentInstant()) is not { } step)
            return false;
        var taken =
            await db
                .Users.Where(u => u.Id == user.Id && (u.LastCodeStep == null || u.LastCodeStep < step))
                .ExecuteUpdateAsync(set => set.SetProperty(u => u.LastCodeStep, step), cancellation) == 1;
        // The account is saved whole afterwards: what it does not know would be undone, and the code would open again.
        if (taken)
            user.LastCodeStep = step;
        return taken;
    }

    /// <summary>Uses a recovery code up. The account's own stamp lets one of two at once through.</summary>
    public async Task<bool> TakeRecoveryCodeAsync(AppUser user, string code) =>
        (await users.RedeemTwoFactorRecoveryCodeAsync(user, code)).Succeeded;

    public async Task<IReadOnlyList<string>> NewRecoveryCodesAsync(AppUser user, CancellationToken cancellation)
    {
        var codes = await ReplaceCodesAsync(user, cancellation);
        Expect(await users.UpdateAsync(user));
        return codes;
    }

    private async Task<IReadOnlyList<string>> ReplaceCodesAsync(AppUser user, CancellationToken cancellation)
    {
        var codes = RecoveryCodes.New();
        await store.ReplaceCodesAsync(user, codes, cancellation);
        return codes;
    }

    private static void Expect(IdentityResult result)
    {
        if (!result.Succeeded)
            throw new DbUpdateConcurrencyException(result.Errors.First().Description);
    }
}
