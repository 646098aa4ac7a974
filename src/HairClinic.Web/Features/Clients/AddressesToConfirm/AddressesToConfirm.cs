using HairClinic.Web.Data;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Clients;

/// <summary>All addresses that wait to be confirmed among the clients one may open: after an import there are many.</summary>
public sealed class AddressesToConfirm(ClinicDbFactory databases, CurrentActor current)
{
    public const int Most = 100;

    public async Task<IReadOnlyList<UnconfirmedAddressRow>> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await UnconfirmedAddressRow.LoadListAsync(db, current.Person, only: null, Most, cancellation);
    }
}
