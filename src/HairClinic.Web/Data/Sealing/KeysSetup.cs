using Microsoft.AspNetCore.DataProtection.KeyManagement;

namespace HairClinic.Web.Data.Sealing;

public static class KeysSetup
{
    /// <summary>Keys outside the database, and what is sealed under them.</summary>
    public static IServiceCollection AddKeys(this IServiceCollection services)
    {
        services
            .AddOptions<KeyManagementOptions>()
            .Configure<MasterKeys>((options, masters) => options.XmlEncryptor = new ProtectionKeyEncryptor(masters));
        return services.AddSingleton<MasterKeys>().AddSingleton<Sealer>();
    }
}
