using HairClinic.Web.Features.Clients.Photos;

namespace HairClinic.Web.Features.Clients;

public static class ClientsArea
{
    public static IServiceCollection AddClients(this IServiceCollection services) =>
        services
            .AddScoped<AddClient.AddClient>()
            .AddScoped<AddClient.AddClientRules>()
            .AddScoped<Card.Card>()
            .AddScoped<Find.Find>()
            .AddScoped<NoteRepair.NoteRepair>()
            .AddSingleton<NoteRepair.NoteRepairRules>()
            .AddScoped<NextUnit.NextUnit>()
            .AddSingleton<NextUnit.NextUnitRules>()
            .AddScoped<MergeClients.MergeClients>()
            .AddScoped<MergeClients.DuplicateSearch>()
            .AddScoped<EditClient.EditClient>()
            .AddScoped<AddLifeEvent.AddLifeEvent>()
            .AddScoped<AddLifeEvent.AddLifeEventRules>()
            .AddScoped<RecordCareFacts.RecordCareFacts>()
            .AddScoped<RecordCareFacts.RecordCareFactsRules>()
            .AddScoped<WhoMaySee.WhoMaySee>()
            .AddScoped<WhoMaySee.WhoMaySeeRules>()
            .AddScoped<TransferClient.TransferClient>()
            .AddScoped<TransferClient.TransferClientRules>()
            .AddScoped<AskForClient.AskForClient>()
            .AddScoped<AskForClient.AskForClientRules>()
            .AddScoped<AskedFor.AskedFor>()
            .AddScoped<AskedFor.AskedForRules>()
            .AddScoped<HealthAnswers.HealthAnswers>()
            .AddSingleton<HealthAnswers.HealthAnswersRules>()
            .AddScoped<Photos.Photos>()
            .AddSingleton<Photos.PhotosRules>()
            .AddScoped<KeepGuardians.KeepGuardians>()
            .AddScoped<KeepGuardians.KeepGuardiansRules>()
            .AddScoped<ConfirmAddress.ConfirmAddress>()
            .AddSingleton<ConfirmAddress.ConfirmAddressRules>()
            .AddScoped<AddressesToConfirm.AddressesToConfirm>()
            .AddScoped<ReportLift.ReportLift>()
            .AddScoped<ReportLift.ReportLiftRules>();

    public static void MapClients(this IEndpointRouteBuilder routes) => routes.MapPhotos();
}
