using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using HairClinic.Web.Mail;

namespace HairClinic.Web.Features.MyHair;

/// <summary>Why a sign-in opens dates only, and what to do about it.</summary>
public sealed class AddressNotConfirmed(ClinicDbFactory databases, CurrentActor current, ClientSessionStore signIns, MailStatusMonitor mail)
{
    /// <returns>Null when the client is no longer there.</returns>
    public async Task<Screen?> OpenAsync(CancellationToken cancellation)
    {
        var (actor, client) = (current.Client, current.Client.ClientId);
        await using var db = databases.Open();
        var confirmed = await db.MayReadConfidentialAsync(cancellation);
        var pages = await signIns.PagesAsync(actor, cancellation);
        var why =
            confirmed ? Reason.None
            : pages.Any(p => p.ClientId == client && p.OpensAll) ? Reason.Invitation
            : Reason.NotConfirmed;
        var letters = (await mail.CheckReadinessAsync(cancellation)).CanSendLinks;
        return await (
            from c in db.Clients
            where c.Id == client
            join salon in db.Salons on c.HomeSalonId equals salon.Id
            select new Screen(salon.Name, salon.Phone, why, letters)
        ).SingleOrDefaultAsync(cancellation);
    }

    public enum Reason
    {
        /// <summary>It was confirmed meanwhile.</summary>
        None,

        /// <summary>Nobody confirmed the address yet.</summary>
        NotConfirmed,

        /// <summary>The address opens everything, the invitation they came by does not.</summary>
        Invitation,
    }

    /// <param name="LettersLeave">Whether a letter can be promised just now.</param>
    public sealed record Screen(string Salon, string? Phone, Reason Why, bool LettersLeave);
}
