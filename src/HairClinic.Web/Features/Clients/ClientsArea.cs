namespace HairClinic.Web.Features.Clients;

public static class ClientsArea
{
    public static IServiceCollection AddClients(this IServiceCollection services) =>
        services
            .AddScoped<AddClient>()
            .AddScoped<AddClientRules>()
            .AddScoped<Card>()
            .AddScoped<Find>()
            .AddScoped<NoteRepair>()
            .AddSingleton<NoteRepairRules>()
            .AddScoped<NextUnit>()
            .AddSingleton<NextUnitRules>()
            .AddScoped<MergeClients>()
            .AddScoped<DuplicateSearch>()
            .AddScoped<EditClient>()
            .AddScoped<EndNeed>()
            .AddSingleton<EndNeedRules>()
            .AddSingleton<ReturnRules>()
            .AddScoped<AddLifeEvent>()
            .AddScoped<AddLifeEventRules>()
            .AddScoped<AllowBonding>()
            .AddSingleton<AllowBondingRules>()
            .AddScoped<RecordSkinAndHabits>()
            .AddScoped<RecordSkinAndHabitsRules>()
            .AddScoped<WhoMaySee>()
            .AddScoped<WhoMaySeeRules>()
            .AddScoped<TransferClient>()
            .AddScoped<TransferClientRules>()
            .AddScoped<RequestClientAccess>()
            .AddScoped<RequestClientAccessRules>()
            .AddScoped<AnswerSalonRequests>()
            .AddScoped<AnswerSalonRequestsRules>()
            .AddScoped<HealthAnswers>()
            .AddSingleton<HealthAnswersRules>()
            .AddScoped<Photos>()
            .AddSingleton<PhotosRules>()
            .AddScoped<KeepGuardians>()
            .AddScoped<KeepGuardiansRules>()
            .AddScoped<ConfirmAddress>()
            .AddSingleton<ConfirmAddressRules>()
            .AddScoped<AddressesToConfirm>()
            .AddScoped<ReportLift>()
            .AddScoped<ReportLiftRules>();

    public static void MapClients(this IEndpointRouteBuilder routes) => routes.MapPhotos();
}
