using HairClinic.Web.Data.Work;
using HairClinic.Web.Mail;

namespace HairClinic.Web.Features.MyHair;

/// <summary>The letters the demo practice would have sent. There is no such page for a real practice.</summary>
public sealed class DemoLetters(MailSenderSelector route, LetterFolder folder)
{
    /// <summary>Of the demo's client with an order in flight, who sees the page of another client too.</summary>
    public const string CasimirsAddress = "casimir@example.org";

    /// <summary>Of the demo's client whose bond is still setting.</summary>
    public const string HyacinthsAddress = "hyacinth@example.org";

    private const int Newest = 20;

    /// <returns>Null unless the only practice here is the demo and letters go to the folder.</returns>
    public async Task<IReadOnlyList<string>?> OpenAsync(CancellationToken cancellation) =>
        await route.WayAsync(cancellation) is MailWay.Demo ? await folder.ListNewestAsync(Newest, cancellation) : null;
}
