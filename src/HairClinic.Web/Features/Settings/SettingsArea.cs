using FluentValidation;
using HairClinic.Web.Features.Settings.AccessLog;
using HairClinic.Web.Features.Settings.FirstRun;
using HairClinic.Web.Features.Settings.Tablets;

namespace HairClinic.Web.Features.Settings;

public static class SettingsArea
{
    public static IServiceCollection AddSettings(this IServiceCollection services) =>
        services
            .AddScoped<Overview.Overview>()
            .AddScoped<Salons.Salons>()
            .AddScoped<EditSalon.EditSalon>()
            .AddSingleton<IValidator<EditSalon.EditSalon.Input>, EditSalon.EditSalonRules>()
            .AddScoped<EditChairs.EditChairs>()
            .AddSingleton<IValidator<EditChairs.EditChairs.Input>, EditChairs.EditChairsRules>()
            .AddScoped<People.People>()
            .AddScoped<EditPerson.EditPerson>()
            .AddSingleton<IValidator<EditPerson.EditPerson.Input>, EditPerson.EditPersonRules>()
            .AddScoped<Services.Services>()
            .AddScoped<EditService.EditService>()
            .AddSingleton<IValidator<EditService.EditService.Input>, EditService.EditServiceRules>()
            .AddScoped<HoldWindows.HoldWindows>()
            .AddScoped<EditHoldWindow.EditHoldWindow>()
            .AddSingleton<IValidator<EditHoldWindow.EditHoldWindow.Input>, EditHoldWindow.EditHoldWindowRules>()
            .AddScoped<Products.Products>()
            .AddScoped<EditProduct.EditProduct>()
            .AddSingleton<IValidator<EditProduct.EditProduct.Input>, EditProduct.EditProductRules>()
            .AddScoped<UnitKinds.UnitKinds>()
            .AddScoped<EditBase.EditBase>()
            .AddSingleton<IValidator<EditBase.EditBase.Input>, EditBase.EditBaseRules>()
            .AddScoped<EditUnitKind.EditUnitKind>()
            .AddSingleton<IValidator<EditUnitKind.EditUnitKind.Input>, EditUnitKind.EditUnitKindRules>()
            .AddScoped<EditWorkshop.EditWorkshop>()
            .AddSingleton<IValidator<EditWorkshop.EditWorkshop.Input>, EditWorkshop.EditWorkshopRules>()
            .AddScoped<Rhythm.Rhythm>()
            .AddSingleton<IValidator<Rhythm.Rhythm.Input>, Rhythm.RhythmRules>()
            .AddScoped<WearFactors.WearFactors>()
            .AddSingleton<IValidator<WearFactors.WearFactors.Input>, WearFactors.WearFactorsRules>()
            .AddScoped<EditAftercare.EditAftercare>()
            .AddSingleton<EditAftercare.EditAftercareRules>()
            .AddScoped<Letters.Letters>()
            .AddScoped<AccessLog.AccessLog>()
            .AddScoped<Tablets.Tablets>()
            .AddScoped<MakeTablet.MakeTablet>()
            .AddSingleton<MakeTablet.MakeTabletRules>()
            .AddScoped<ThrowDemoAway.ThrowDemoAway>()
            .AddSingleton<ThrowDemoAway.ThrowDemoAwayRules>()
            .AddFirstRun();

    public static void MapSettings(this IEndpointRouteBuilder routes)
    {
        routes.MapAccessLog();
        routes.MapTablets();
    }

    private static IServiceCollection AddFirstRun(this IServiceCollection services) =>
        services
            .AddSingleton<SetupCode>()
            .AddSingleton<Presence>()
            .AddScoped<Guide>()
            .AddScoped<FirstRun.Welcome.Welcome>()
            .AddSingleton<FirstRun.Welcome.WelcomeRules>()
            .AddScoped<FirstRun.FirstPeople.FirstPeople>()
            .AddSingleton<FirstRun.FirstPeople.FirstPeopleRules>()
            .AddScoped<FirstRun.KeepDefaults.KeepDefaults>()
            .AddSingleton<FirstRun.KeepDefaults.KeepDefaultsRules>()
            .AddScoped<FirstRun.BringBinder.BringBinder>()
            .AddHostedService<FirstRunNotice>();
}
