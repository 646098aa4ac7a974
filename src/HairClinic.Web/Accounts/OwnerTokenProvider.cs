using HairClinic.Web.Data.Rows;
using Microsoft.AspNetCore.DataProtection;

namespace HairClinic.Web.Accounts;

/// <summary>
/// What a link from the machine's own command line holds: it opens for an hour, and bound to the account's stamp it opens once. No page
/// makes one.
/// </summary>
public sealed class OwnerTokenProvider(
    IDataProtectionProvider protection,
    IOptions<OwnerTokenProvider.Lifespan> options,
    ILogger<DataProtectorTokenProvider<AppUser>> log
) : DataProtectorTokenProvider<AppUser>(protection, options, log)
{
    public const string Provider = "owner link";

    public sealed class Lifespan : DataProtectionTokenProviderOptions
    {
        public Lifespan() => (Name, TokenLifespan) = (Provider, TimeSpan.FromHours(1));
    }
}
