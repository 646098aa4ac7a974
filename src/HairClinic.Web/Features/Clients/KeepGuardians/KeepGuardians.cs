using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Clients;

/// <summary>Who looks after a client and may open the client's own page: added with a name, an e-mail and an end, and taken away.</summary>
public sealed class KeepGuardians(ClinicDbFactory databases, WriteOnce writes, CurrentActor current)
{
    /// <returns>Null: not there, or not of a salon of theirs: whom a client's pages open to is for their home salon to say.</returns>
    public async Task<Screen?> OpenAsync(Guid clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await db
            .Clients.AsNoTracking()
            .UnmergedById(clientId)
            .AtHomeInSalonsOf(current.Person)
            .Select(c => new Screen(
                c.Name,
                c.Code,
                db.Guardians.Where(g => g.ClientId == c.Id)
                    .OrderBy(g => g.Name)
                    .Select(g => new Row(
                        g.Id,
                        g.Name,
                        g.Email,
                        g.EndsOn,
                        db.OpeningAddresses.Any(a => a.GuardianId == g.Id && a.EndedAt == null && a.ConfirmedAt != null)
                    ))
                    .ToList()
            ))
            .SingleOrDefaultAsync(cancellation);
    }

    /// <exception cref="Refusal">The client is not there.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(KeepGuardians),
            input,
            async db =>
            {
                if (!await db.Clients.UnmergedById(input.ClientId).AtHomeInSalonsOf(current.Person).AnyAsync(cancellation))
                    throw new Refusal("This client is not there any more. They may have been merged with another record.");
                if (input.TakeAway is { } gone)
                    db.Guardians.RemoveRange(
                        await db.Guardians.Where(g => g.Id == gone && g.ClientId == input.ClientId).ToListAsync(cancellation)
                    );
                else
                    db.Guardians.Add(new Guardian(key, input.ClientId, input.Name, input.Email, input.EndsOn));
                return new Outcome(input.ClientId);
            },
            cancellation
        );

    public sealed record Screen(string Name, string Code, IReadOnlyList<Row> Guardians);

    /// <param name="Confirmed">Else their address opens dates only.</param>
    public sealed record Row(Guid Id, string Name, string Email, LocalDate? EndsOn, bool Confirmed);

    public sealed record Input
    {
        public Guid ClientId { get; set; }

        /// <summary>Instead of adding: the one who is taken away.</summary>
        public Guid? TakeAway { get; set; }

        public string Name { get; set; } = "";
        public string Email { get; set; } = "";

        /// <summary>The last day it holds; null for as long as it is kept here.</summary>
        public LocalDate? EndsOn { get; set; }
    }

    public sealed record Outcome(Guid ClientId);
}
