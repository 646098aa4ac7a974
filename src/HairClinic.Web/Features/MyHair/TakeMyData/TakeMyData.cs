using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Fence;
using HairClinic.Web.Mail;
using HairClinic.Web.Privacy;

namespace HairClinic.Web.Features.MyHair;

/// <summary>A client takes out everything the book holds of them, having opened a link a moment ago.</summary>
public sealed class TakeMyData(
    ClinicDbFactory databases,
    ClientTakeOut archive,
    StepUpCheck check,
    LinkAskQueue asks,
    MailStatusMonitor mail,
    CurrentActor current
)
{
    public const string FileAddress = "/my-hair/take-my-data/file";

    /// <returns>Null when the client is no longer there, or their address is not confirmed.</returns>
    /// <exception cref="Domain.Practices.Refusal">More than fits into one archive.</exception>
    public async Task<Screen?> OpenAsync(CancellationToken cancellation)
    {
        if (!await IsThereAsync(cancellation))
            return null;
        await using var wide = databases.OpenPracticeWide(nameof(TakeMyData));
        if (await ClientTakeOut.PreviewAsync(wide, current.Client.ClientId, cancellation) is not { } contents)
            return null;
        var pictures = await wide.Photos.CountAsync(p => contents.Ids.Contains(p.ClientId) && p.RemovedAt == null, cancellation);
        var health = contents.Rows.ContainsKey("health_answers");
        return new Screen(contents.Rows.Values.Sum(), pictures, health, await check.IsFreshAsync(cancellation));
    }

    /// <summary>Asks for a new link to the address this sign-in came by; it is sent behind the screens, as any link is.</summary>
    /// <returns>Null while no link can be sent.</returns>
    public async Task<MailWay?> SaveAsync(CancellationToken cancellation)
    {
        var state = await mail.CheckReadinessAsync(cancellation);
        if (!state.CanSendLinks)
            return null;
        var signIn = current.Client.SignInId;
        await using var db = databases.Open();
        var email = await db.ClientSignIns.Where(s => s.Id == signIn).Select(s => s.Email).SingleOrDefaultAsync(cancellation);
        if (email is null)
            return state.Way;
        await using var unfenced = databases.OpenWithoutActor();
        await asks.AskAsync(unfenced, email, cancellation);
        return state.Way;
    }

    /// <param name="begin">Called once it is sure that there is something to write; returns what to write to.</param>
    /// <returns>Whether there was.</returns>
    public async Task<bool> WriteAsync(Func<Stream> begin, CancellationToken cancellation)
    {
        if (!await IsThereAsync(cancellation))
            return false;
        await using var wide = databases.OpenPracticeWide(nameof(TakeMyData));
        if (await ClientTakeOut.PreviewAsync(wide, current.Client.ClientId, cancellation) is not { } contents)
            return false;
        await archive.WriteAsync(wide, contents, begin(), cancellation);
        return true;
    }

    // Inside the client's own fence, before anything is read past it.
    private async Task<bool> IsThereAsync(CancellationToken cancellation)
    {
        var client = current.Client.ClientId;
        await using var db = databases.Open();
        return await db.MayReadConfidentialAsync(cancellation) && await db.Clients.UnmergedById(client).AnyAsync(cancellation);
    }

    /// <param name="Rows">In all tables together.</param>
    /// <param name="Health">Whether there are health answers among them.</param>
    /// <param name="Fresh">Whether a link was opened a moment ago.</param>
    public sealed record Screen(int Rows, int Photos, bool Health, bool Fresh);
}
