namespace HairClinic.Web.Features.Clients;

public static class ClientsArea
{
    public static IServiceCollection AddClients(this IServiceCollection services) =>
        services.AddScoped<AddClient.AddClient>().AddScoped<AddClient.AddClientRules>();
}
