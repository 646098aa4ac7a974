namespace HairClinic.Web.Features.Wear;

public static class WearArea
{
    public static IServiceCollection AddWear(this IServiceCollection services) =>
        services
            .AddScoped<Due.Due>()
            .AddScoped<OfferSlots.OfferSlots>()
            .AddScoped<NoteContact.NoteContact>()
            .AddSingleton<NoteContact.NoteContactRules>();
}
