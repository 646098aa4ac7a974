namespace HairClinic.Web.Features.Units;

public static class UnitsArea
{
    public static IServiceCollection AddUnits(this IServiceCollection services) =>
        services
            .AddScoped<AddUnit>()
            .AddSingleton<AddUnitRules>()
            .AddScoped<UnitCard>()
            .AddScoped<TakeStep>()
            .AddSingleton<TakeStepRules>()
            .AddScoped<TakeBackStep>()
            .AddSingleton<TakeBackStepRules>()
            .AddScoped<CorrectStepDay>()
            .AddSingleton<CorrectStepDayRules>()
            .AddScoped<AskAboutUnit>()
            .AddSingleton<AskAboutUnitRules>()
            .AddScoped<UnitLabel>()
            .AddScoped<ChooseFromStock>()
            .AddScoped<PlaceOrder>()
            .AddSingleton<PlaceOrderRules>()
            .AddScoped<Orders>()
            .AddScoped<CorrectBondDays>()
            .AddSingleton<CorrectBondDaysRules>()
            .AddScoped<DatesToCheck>()
            .AddSingleton<DatesToCheckRules>()
            .AddScoped<OrderDetails>()
            .AddScoped<TakeOrderStep>()
            .AddSingleton<TakeOrderStepRules>()
            .AddScoped<Shelf>();

    public static void MapUnits(this IEndpointRouteBuilder routes) => routes.MapOrders();
}
