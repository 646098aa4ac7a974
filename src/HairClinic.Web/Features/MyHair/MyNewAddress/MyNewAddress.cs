using HairClinic.Web.AccessLog;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.MyHair;

/// <summary>Whoever reads at a client's old address says whether the new one is right. Looking does nothing: mail scanners open links too.</summary>
public sealed class MyNewAddress(PracticeJobRunner jobs, IClock clock)
{
    /// <returns>Null when the link is used, too old or made up, or the address was changed again.</returns>
    public Task<Screen?> OpenAsync(string? token, CancellationToken cancellation) =>
        InPracticeAsync<Screen?>(
            token,
            async (_, db, hash) =>
                await (
                    from address in AddressConfirmationLinks.FindByHash(db, hash, clock.GetCurrentInstant()).AsNoTracking()
                    join client in db.Clients on address.ClientId equals client.Id
                    join salon in db.Salons on client.HomeSalonId equals salon.Id
                    join guardian in db.Guardians on address.GuardianId equals (Guid?)guardian.Id into guardians
                    from guardian in guardians.DefaultIfEmpty()
                    select new
                    {
                        address,
                        Guardian = guardian == null ? null : guardian.Name,
                        salon.Phone,
                    }
                ).SingleOrDefaultAsync(cancellation)
                    is { } found
                    ? new Screen(found.address.Masked, found.Guardian, found.Phone)
                    : null
        );

    /// <param name="yes">False: they did not ask for it, and the address opens nothing until the salon has spoken to them.</param>
    /// <returns>What it opens now; null when the link was of no use.</returns>
    public Task<ClientPageAccessLevel?> SaveAsync(string? token, bool yes, CancellationToken cancellation) =>
        InPracticeAsync<ClientPageAccessLevel?>(
            token,
            async (services, db, hash) =>
            {
                var now = clock.GetCurrentInstant();
                if (await AddressConfirmationLinks.FindByHash(db, hash, now).SingleOrDefaultAsync(cancellation) is not { } address)
                    return null;
                await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
                await services
                    .GetRequiredService<AccessLogStore>()
                    .NoteOnBehalfOfAsync(
                        db,
                        new ClientActor(db.PracticeId, address.ClientId),
                        yes ? AccessAction.ConfirmedOpeningAddress : AccessAction.DeniedOpeningAddress,
                        address.ClientId,
                        address.Id,
                        "by the address before",
                        cancellation
                    );
                if (yes)
                    address.ConfirmFromOldAddress(now);
                else
                    address.Deny(now);
                try
                {
                    await db.SaveChangesAsync(cancellation);
                }
                catch (DbUpdateConcurrencyException)
                {
                    // Two taps at once: the other one counts.
                    return null;
                }
                await transaction.CommitAsync(cancellation);
                return address.Opens;
            }
        );

    private async Task<T?> InPracticeAsync<T>(string? token, Func<IServiceProvider, ClinicDb, byte[], Task<T?>> work) =>
        AddressConfirmationLinks.ParseToken(token) is not var (practice, hash)
            ? default
            : await jobs.RunJobAsync(
                practice,
                "new-address",
                async services =>
                {
                    await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                    return await work(services, db, hash);
                }
            );

    /// <param name="Address">Only so much of it that its owner knows it again.</param>
    /// <param name="Guardian">Who looks after them, where it is such a person's; null for the client's own.</param>
    public sealed record Screen(string Address, string? Guardian, string? Phone);
}
