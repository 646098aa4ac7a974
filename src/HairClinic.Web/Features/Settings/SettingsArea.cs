namespace HairClinic.Web.Features.Settings;

public static class SettingsArea
{
    public static IServiceCollection AddSettings(this IServiceCollection services) =>
        services
            .AddScoped<Overview>()
            .AddScoped<Salons>()
            .AddScoped<EditSalon>()
            .AddSingleton<IValidator<EditSalon.Input>, EditSalonRules>()
            .AddScoped<EditChairs>()
            .AddSingleton<IValidator<EditChairs.Input>, EditChairsRules>()
            .AddScoped<People>()
            .AddScoped<EditPerson>()
            .AddSingleton<IValidator<EditPerson.Input>, EditPersonRules>()
            .AddScoped<Services>()
            .AddScoped<EditService>()
            .AddSingleton<IValidator<EditService.Input>, EditServiceRules>()
            .AddScoped<HoldWindows>()
            .AddScoped<EditHoldWindow>()
            .AddSingleton<IValidator<EditHoldWindow.Input>, EditHoldWindowRules>()
            .AddScoped<Products>()
            .AddScoped<EditProduct>()
            .AddSingleton<IValidator<EditProduct.Input>, EditProductRules>()
            .AddScoped<UnitKinds>()
            .AddScoped<EditBaseMaterial>()
            .AddSingleton<IValidator<EditBaseMaterial.Input>, EditBaseMaterialRules>()
            .AddScoped<EditUnitKind>()
            .AddSingleton<IValidator<EditUnitKind.Input>, EditUnitKindRules>()
            .AddScoped<KeepSpares>()
            .AddSingleton<IValidator<KeepSpares.Input>, KeepSparesRules>()
            .AddScoped<EditWorkshop>()
            .AddScoped<AnswerClosure>()
            .AddSingleton<AnswerClosureRules>()
            .AddSingleton<IValidator<EditWorkshop.Input>, EditWorkshopRules>()
            .AddScoped<EditPractice>()
            .AddSingleton<IValidator<EditPractice.Input>, EditPracticeRules>()
            .AddScoped<WearFactors>()
            .AddSingleton<IValidator<WearFactors.Input>, WearFactorsRules>()
            .AddScoped<EditAftercare>()
            .AddSingleton<EditAftercareRules>()
            .AddScoped<Letters>()
            .AddScoped<AccessLog>()
            .AddScoped<Tablets>()
            .AddScoped<MakeTablet>()
            .AddSingleton<MakeTabletRules>()
            .AddScoped<ThrowDemoAway>()
            .AddSingleton<ThrowDemoAwayRules>()
            .AddFirstRun();

    public static void MapSettings(this IEndpointRouteBuilder routes)
    {
        routes.MapAccessLog();
        routes.MapDeregisterTablet();
    }

    private static IServiceCollection AddFirstRun(this IServiceCollection services) =>
        services
            .AddSingleton<SetupCode>()
            .AddSingleton<PracticePresence>()
            .AddScoped<SetupProgressReader>()
            .AddScoped<CreatePractice>()
            .AddSingleton<CreatePracticeRules>()
            .AddScoped<FirstPeople>()
            .AddSingleton<FirstPeopleRules>()
            .AddScoped<KeepDefaults>()
            .AddSingleton<KeepDefaultsRules>()
            .AddScoped<BringBinder>()
            .AddHostedService<FirstRunNotice>();
}
