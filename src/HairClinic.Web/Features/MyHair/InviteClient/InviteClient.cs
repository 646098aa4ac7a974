using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Mail;

namespace HairClinic.Web.Features.MyHair;

/// <summary>The desk sends a client the link to their own page.</summary>
public sealed class InviteClient(ClinicDbFactory databases, WriteOnce writes, SignInLinkStore links, MailStatusMonitor mail)
{
    public async Task<Screen?> OpenAsync(Guid clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await db
            .Clients.AsNoTracking()
            .Where(c => c.Id == clientId && c.MergedIntoId == null)
            .Select(c => new Screen(
                c.Id,
                c.Name,
                c.Email,
                db.OpeningAddresses.Any(a => a.ClientId == c.Id && a.GuardianId == null && a.EndedAt == null && a.ConfirmedAt != null)
            ))
            .SingleOrDefaultAsync(cancellation);
    }

    /// <exception cref="Refusal">The client is not there, has no e-mail address said no to the one they have or to letters, or no letter leaves here just now.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        var state = await mail.CheckReadinessAsync(cancellation);
        if (state.WhyNoLink() is { } why)
            throw why;
        return await writes.RunAsync(
            key,
            nameof(InviteClient),
            input,
            async db =>
            {
                var client = await db.Clients.SingleOrDefaultAsync(c => c.Id == input.ClientId, cancellation);
                if (client?.Email is null)
                    throw new Refusal("This client has no e-mail address yet. Add it first.");
                client.RequireNeed();
                var address = await db.OpeningAddresses.SingleOrDefaultAsync(
                    a => a.ClientId == client.Id && a.GuardianId == null && a.EndedAt == null,
                    cancellation
                );
                if (address?.Opens == ClientPageAccessLevel.Nothing)
                    throw new Refusal("Whoever reads at the client's old address said no to this one. Speak to the client first.");
                if (await db.ClientPreferences.AnyAsync(p => p.ClientId == client.Id && !p.Letters, cancellation))
                    throw new Refusal(
                        "This client wants no letters that they did not ask for. They get a link whenever they ask for one themselves."
                    );
                await links.InviteClientAsync(db, client, cancellation);
                return new Outcome(client.Email, state.Way);
            },
            cancellation
        );
    }

    /// <param name="Confirmed">Else the address opens dates only.</param>
    public sealed record Screen(Guid ClientId, string Name, string? Email, bool Confirmed);

    public sealed record Input(Guid ClientId);

    /// <param name="Way">Whether it is sent at all: the demo shows its letters instead.</param>
    public sealed record Outcome(string Email, MailWay Way);
}

public sealed class InviteClientRules : AbstractValidator<InviteClient.Input>
{
    public InviteClientRules() => RuleFor(x => x.ClientId).NotEmpty();
}
