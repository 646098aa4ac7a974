using HairClinic.Web.Mail;

namespace HairClinic.Web.Features.Settings;

public sealed partial class LettersPage
{
    private Letters.Screen? _screen;
    private Letters.Outcome? _outcome;
    private Refusal? _refused;
    private bool _sending;

    private string Here => Site.ConfiguredOrPageBaseUrl(Navigation.BaseUri);

    // Whoever sees a machine's own address may be looking from beyond it, through something the program does not know of.
    private bool IsElsewhere =>
        Site.Set is null && _screen?.SiteUrl is { } links && new Uri(links).IsLoopback && !new Uri(Navigation.BaseUri).IsLoopback;

    protected override async Task OnInitializedAsync() => _screen = await Slice.OpenAsync(ask: true, CancellationToken.None);

    private async Task TryAgainAsync()
    {
        _sending = true;
        await Slice.RetryNonMailWorkAsync(CancellationToken.None);
        _screen = await Slice.OpenAsync(ask: false, CancellationToken.None);
        _sending = false;
    }

    private async Task SendAsync()
    {
        (_outcome, _refused, _sending) = (null, null, true);
        try
        {
            _outcome = await Slice.SendTestAsync(CancellationToken.None);
        }
        catch (Refusal refusal)
        {
            _refused = refusal;
        }
        finally
        {
            _sending = false;
        }
        _screen = await Slice.OpenAsync(ask: true, CancellationToken.None);
    }
}
