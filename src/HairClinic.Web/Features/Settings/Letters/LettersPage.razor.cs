using HairClinic.Web.Mail;

namespace HairClinic.Web.Features.Settings;

public sealed partial class LettersPage
{
    private static readonly Dictionary<MailWay, string> Ways = new()
    {
        [MailWay.Server] = "Through the mail server",
        [MailWay.Folder] = "As files in a folder of the machine, to try things out",
        [MailWay.Demo] = "Not at all: this is the demo, and shows them to anybody",
        [MailWay.None] = "Not at all",
    };

    private static readonly Dictionary<MailWay, string> Sent = new()
    {
        [MailWay.Server] = "The mail server took the letter to {0}. Look into that mailbox, and among what it holds back as unwanted.",
        [MailWay.Folder] = "The letter to {0} lies in the folder. It was sent to nobody.",
        [MailWay.Demo] = "The letter to {0} lies among the letters of the demo. It was sent to nobody.",
    };

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
