namespace HairClinic.Web.Features.Wear;

public static class WearArea
{
    public static IServiceCollection AddWear(this IServiceCollection services) =>
        services.AddScoped<Due>().AddScoped<OfferSlots>().AddScoped<NoteContact>().AddSingleton<NoteContactRules>();
}
