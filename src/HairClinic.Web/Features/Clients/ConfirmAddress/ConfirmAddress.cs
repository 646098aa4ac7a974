using HairClinic.Web.AccessLog;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Clients;

/// <summary>Somebody who did not enter an address asks the client and confirms it; from then on it opens all of the client's own pages.</summary>
public sealed class ConfirmAddress(
    ClinicDbFactory databases,
    WriteOnce writes,
    AccessLogStore log,
    StepUpCheck check,
    CurrentActor current,
    IClock clock
)
{
    /// <summary>A household's at most.</summary>
    private const int Most = 50;

    /// <returns>Null: not there, or not theirs.</returns>
    public async Task<Screen?> OpenAsync(Guid clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var client = await db
            .Clients.AsNoTracking()
            .UnmergedById(clientId)
            .Select(c => new { c.Name, c.Code })
            .SingleOrDefaultAsync(cancellation);
        return client is null
            ? null
            : new Screen(
                client.Name,
                client.Code,
                await UnconfirmedAddressRow.LoadListAsync(db, current.Person, clientId, Most, cancellation)
            );
    }

    /// <exception cref="Refusal">
    /// They entered it themselves, may not read health, were only let in, or did not prove anew who they are where nobody else could confirm it.
    /// </exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(ConfirmAddress),
            input,
            async db =>
            {
                var person = current.Person;
                var address =
                    await db.OpeningAddresses.SingleOrDefaultAsync(a => a.Id == input.AddressId, cancellation)
                    ?? throw new Refusal("This address was changed meanwhile.");
                var others = await db.ClientsWhoseAddressOthersMayConfirmAsync([address.ClientId], person.PersonId, cancellation);
                var home = await db.Clients.Where(c => c.Id == address.ClientId).Select(c => c.HomeSalonId).SingleAsync(cancellation);
                var right = AddressConfirmationRights.For(
                    person.StaffRole,
                    StaffPermissions.MayManageClient(person, home),
                    person.PersonId,
                    address.EnteredBy,
                    others.Count > 0
                );
                if (address.ConfirmedAt is not null)
                    return new Outcome(address.ClientId);
                address.Confirm(person.PersonId, right, clock.GetCurrentInstant());
                if (right == AddressConfirmerEligibility.OnlyProvedAnew)
                    await check.RefuseUnlessFreshAsync(cancellation);
                await db.Database.BeginTransactionAsync(cancellation);
                await log.NoteAsync(
                    db,
                    AccessAction.ConfirmedOpeningAddress,
                    address.ClientId,
                    address.Id,
                    right == AddressConfirmerEligibility.OnlyProvedAnew ? "entered by themselves; nobody else could" : null,
                    cancellation
                );
                return new Outcome(address.ClientId);
            },
            cancellation
        );

    public sealed record Screen(string Name, string Code, IReadOnlyList<UnconfirmedAddressRow> Addresses);

    public sealed record Input(Guid AddressId);

    public sealed record Outcome(Guid ClientId);
}
