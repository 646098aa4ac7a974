using HairClinic.Web.Accounts;
using HairClinic.Web.Accounts.Tablets;
using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Features.Accounts;

/// <summary>One's own PIN at the shared tablet one is at.</summary>
public sealed class SetPin(CurrentAccount own, TabletStore tablets, PinStore pins, StepUpCheck check, AccountNotices notices)
{
    public const string NoTablet = "This is no shared tablet. A PIN opens at the tablet where it was set, and nowhere else.";

    /// <returns>Null where this is no shared tablet.</returns>
    public async Task<Screen?> OpenAsync(CancellationToken cancellation) =>
        await tablets.FindCurrentAsync(cancellation) is { } tablet
            ? new Screen(tablet.Name, await pins.HasAsync(await own.ReadAsync(cancellation), tablet, cancellation))
            : null;

    /// <exception cref="Refusal">They did not prove who they are, or this is no shared tablet.</exception>
    public async Task SaveAsync(Input input, CancellationToken cancellation)
    {
        var (user, tablet) = await RequireAsync(cancellation);
        await pins.SetAsync(user, tablet, input.Pin, cancellation);
        await notices.NotifyAsync(user, $"A PIN was set for you at the tablet \"{tablet.Name}\".", cancellation);
    }

    /// <exception cref="Refusal">They did not prove who they are, or this is no shared tablet.</exception>
    public async Task RemoveAsync(CancellationToken cancellation)
    {
        var (user, tablet) = await RequireAsync(cancellation);
        await pins.RemoveAsync(user, tablet, cancellation);
    }

    private async Task<(AppUser User, Tablet Tablet)> RequireAsync(CancellationToken cancellation)
    {
        await check.RefuseUnlessFreshAsync(cancellation);
        var user = await own.ReadAsync(cancellation);
        return await tablets.FindCurrentAsync(cancellation) is { } tablet && tablet.PracticeId == user.PracticeId
            ? (user, tablet)
            : throw new Refusal(NoTablet);
    }

    public sealed record Screen(string Tablet, bool HasPin);

    public sealed record Input
    {
        public string Pin { get; set; } = "";
        public string Again { get; set; } = "";
    }
}
