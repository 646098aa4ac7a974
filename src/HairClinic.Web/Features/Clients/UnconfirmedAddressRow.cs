using HairClinic.Web.Data;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Clients;

/// <summary>An address that waits to be confirmed, and whether whoever looks may do it.</summary>
/// <param name="Guardian">Whose it is when it is not the client's own.</param>
/// <param name="By">Who entered it; null for a job, and for somebody who left.</param>
/// <param name="HomeSalonId">The client's.</param>
/// <param name="Zone">The home salon's.</param>
public sealed record UnconfirmedAddressRow(
    Guid Id,
    Guid ClientId,
    string Client,
    string Code,
    string Email,
    string? Guardian,
    Instant EnteredAt,
    Guid HomeSalonId,
    string Zone,
    string? By,
    Guid? EnteredBy,
    bool Denied
)
{
    public AddressConfirmerEligibility Right { get; init; }

    /// <param name="only">One client's; null for all whom the reader may open.</param>
    public static async Task<IReadOnlyList<UnconfirmedAddressRow>> LoadListAsync(
        ClinicDb db,
        PersonActor reader,
        Guid? only,
        int most,
        CancellationToken cancellation
    )
    {
        var rows = await (
            from address in db.OpeningAddresses.AsNoTracking()
            where address.EndedAt == null && address.ConfirmedAt == null && (only == null || address.ClientId == only)
            join client in db.Clients on address.ClientId equals client.Id
            where client.MergedIntoId == null && client.LeftOn == null
            join salon in db.Salons on client.HomeSalonId equals salon.Id
            join guardian in db.Guardians on address.GuardianId equals (Guid?)guardian.Id into guardians
            from guardian in guardians.DefaultIfEmpty()
            join person in db.People on address.EnteredBy equals (Guid?)person.Id into people
            from person in people.DefaultIfEmpty()
            orderby address.DeniedAt == null, address.EnteredAt descending, client.Code
            select new UnconfirmedAddressRow(
                address.Id,
                client.Id,
                client.Name,
                client.Code,
                address.Email,
                guardian == null ? null : guardian.Name,
                address.EnteredAt,
                salon.Id,
                salon.Zone,
                person == null ? null : person.Name,
                address.EnteredBy,
                address.DeniedAt != null
            )
        )
            .Take(most)
            .ToListAsync(cancellation);
        // Only for an owner does it matter whether anybody else could.
        Guid[] alone =
            reader.StaffRole == StaffRole.Owner
                ? [.. rows.Where(r => r.EnteredBy == reader.PersonId).Select(r => r.ClientId).Distinct()]
                : [];
        var others = await db.ClientsWhoseAddressOthersMayConfirmAsync(alone, reader.PersonId, cancellation);
        return
        [
            .. rows.Select(r =>
                r with
                {
                    Right = AddressConfirmationRights.For(
                        reader.StaffRole,
                        StaffPermissions.MayManageClient(reader, r.HomeSalonId),
                        reader.PersonId,
                        r.EnteredBy,
                        others.Contains(r.ClientId)
                    ),
                }
            ),
        ];
    }
}
