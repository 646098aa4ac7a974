using HairClinic.Web.Workers.Mail;

namespace HairClinic.Web.Features.MyHair.DemoLetters;

/// <summary>The letters the demo practice would have sent. There is no such page for a real practice.</summary>
public sealed class DemoLetters(MailRoute route, FolderRoute folder)
{
    private const int Newest = 20;

    /// <returns>Null unless the only practice here is the demo and letters go to the folder.</returns>
    public async Task<IReadOnlyList<string>?> OpenAsync(CancellationToken cancellation) =>
        await route.WayAsync(cancellation) is MailWay.Demo ? await folder.NewestAsync(Newest, cancellation) : null;
}
