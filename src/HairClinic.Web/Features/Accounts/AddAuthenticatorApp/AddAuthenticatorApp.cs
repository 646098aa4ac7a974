using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Ui;
using Microsoft.AspNetCore.DataProtection;

namespace HairClinic.Web.Features.Accounts;

/// <summary>Sets up a codes app: the secret travels sealed inside the form and is kept only once a first code fits it.</summary>
public sealed class AddAuthenticatorApp(CurrentAccount own, SecondFactorStore factor, IDataProtectionProvider protection)
{
    private static readonly TimeSpan Open = TimeSpan.FromMinutes(30);

    /// <param name="sealedSecret">From the form that was shown before; null for a new secret.</param>
    /// <param name="issuer">What the app lists it under: the address it is for, which says nothing about the trade.</param>
    public async Task<Screen> OpenAsync(string? sealedSecret, string issuer, CancellationToken cancellation)
    {
        var user = await own.ReadAsync(cancellation);
        var secret = Unseal(user, sealedSecret) ?? AppCodes.NewSecret();
        var label = Uri.EscapeDataString($"{issuer}:{user.UserName}");
        var link = $"otpauth://totp/{label}?secret={secret}&issuer={Uri.EscapeDataString(issuer)}";
        return new Screen(user.TwoFactorEnabled, secret, Protector(user).Protect(secret, Open), QrDrawing.Encode(link));
    }

    /// <returns>The recovery codes, told this once.</returns>
    /// <exception cref="Refusal">The code does not fit, or the page stood open too long.</exception>
    public async Task<IReadOnlyList<string>> SaveAsync(Input input, CancellationToken cancellation)
    {
        var user = await own.ReadAsync(cancellation);
        if (Unseal(user, input.Sealed) is not { } secret)
            throw new Refusal("This page stood open too long. Scan the new picture.");
        var codes =
            await factor.TurnOnAsync(user, secret, input.Code, cancellation)
            ?? throw new Refusal("This code does not fit. Check that the phone's clock is right, and type the code it shows now.");
        await own.EndOtherSessionsAndNotifyAsync(user, "A codes app is now asked for at your sign-in.", cancellation);
        return codes;
    }

    private string? Unseal(AppUser user, string? text)
    {
        try
        {
            return string.IsNullOrEmpty(text) ? null : Protector(user).Unprotect(text);
        }
        catch (CryptographicException)
        {
            return null;
        }
    }

    private ITimeLimitedDataProtector Protector(AppUser user) =>
        protection.CreateProtector("codes app being set up", user.Id.ToString()).ToTimeLimitedDataProtector();

    /// <param name="Secret">To be typed where a picture cannot be scanned.</param>
    public sealed record Screen(bool IsOn, string Secret, string Sealed, QrDrawing Picture);

    public sealed record Input
    {
        public string? Sealed { get; set; }
        public string Code { get; set; } = "";
    }
}
