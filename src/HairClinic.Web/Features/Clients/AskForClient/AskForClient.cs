using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Phones;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Practices;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Features.Clients.AskForClient;

/// <summary>
/// Somebody of another salon stands at the desk: their home salon is asked to let this one in. The answer is the same whether
/// there is such a client or not, so that nobody is found by guessing.
/// </summary>
public sealed class AskForClient(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    /// <exception cref="Refusal">The person works in no salon.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        var salon = current.Person.AtSalon ?? throw new Refusal("Choose the salon you are at first.");
        var found = await FindAsync(input, cancellation);
        return await writes.RunAsync(
            key,
            nameof(AskForClient),
            input,
            async _ =>
            {
                if (found is { } clientId)
                    await AskAsync(key, clientId, salon, input.Because, cancellation);
                return new Outcome();
            },
            cancellation
        );
    }

    private async Task<Guid?> FindAsync(Input input, CancellationToken cancellation)
    {
        await using var wide = databases.OpenPracticeWide(nameof(AskForClient));
        var (code, phone) = (input.CodeOrPhone.Trim(), (string?)null);
        try
        {
            phone = await TypedPhone.ReadAsync(wide, input.CodeOrPhone, cancellation);
        }
        catch (Refusal)
        {
            // Then it is a code.
        }
        return await wide
            .Clients.Where(c => c.MergedIntoId == null && (c.Code == code || phone != null && c.Phone == phone))
            .OrderBy(c => c.Id)
            .Select(c => (Guid?)c.Id)
            .FirstOrDefaultAsync(cancellation);
    }

    private async Task AskAsync(Guid key, Guid clientId, Guid salon, string because, CancellationToken cancellation)
    {
        await using var wide = databases.OpenPracticeWide(nameof(AskForClient));
        if (await wide.ClientRequests.AnyAsync(r => r.Id == key, cancellation))
            return;
        wide.ClientRequests.Add(new ClientRequest(key, clientId, salon, current.Person.PersonId, clock.GetCurrentInstant(), because));
        await wide.SaveChangesAsync(cancellation);
    }

    public sealed record Input
    {
        /// <summary>The whole of either.</summary>
        public string CodeOrPhone { get; set; } = "";

        public string Because { get; set; } = "";
    }

    public sealed record Outcome;
}
