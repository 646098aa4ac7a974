using HairClinic.Web.Mail;

namespace HairClinic.Web.Features.Settings;

public sealed partial class LettersPage
{
    private Letters.Screen? screen;
    private Letters.Outcome? outcome;
    private Refusal? refused;
    private bool sending;

    private string Here => Site.SeenFrom(Navigation.BaseUri);

    // Whoever sees a machine's own address may be looking from beyond it, through something the program does not know of.
    private bool IsElsewhere =>
        Site.Set is null && screen?.SiteUrl is { } links && new Uri(links).IsLoopback && !new Uri(Navigation.BaseUri).IsLoopback;

    protected override async Task OnInitializedAsync() => screen = await Slice.OpenAsync(ask: true, CancellationToken.None);

    private async Task TryAgainAsync()
    {
        sending = true;
        await Slice.TryAgainAsync(CancellationToken.None);
        screen = await Slice.OpenAsync(ask: false, CancellationToken.None);
        sending = false;
    }

    private async Task SendAsync()
    {
        (outcome, refused, sending) = (null, null, true);
        try
        {
            outcome = await Slice.SendAsync(CancellationToken.None);
        }
        catch (Refusal refusal)
        {
            refused = refusal;
        }
        finally
        {
            sending = false;
        }
        screen = await Slice.OpenAsync(ask: true, CancellationToken.None);
    }
}
