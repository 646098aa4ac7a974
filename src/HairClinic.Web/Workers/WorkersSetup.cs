using HairClinic.Web.Workers.Mail;

namespace HairClinic.Web.Workers;

public static class WorkersSetup
{
    /// <summary>What goes on behind the screens: due dates kept fresh, letters sent.</summary>
    public static IServiceCollection AddWorkers(this IServiceCollection services) =>
        services
            .AddSingleton(sp => MailSettings.ReadFrom(sp.GetRequiredService<IConfiguration>()))
            .AddSingleton<FolderRoute>()
            .AddSingleton<SmtpRoute>()
            .AddSingleton<MailRoute>()
            .AddSingleton<IMailRoute>(sp => sp.GetRequiredService<MailRoute>())
            .AddSingleton<MailStatus>()
            .AddSingleton<DueDateRefresher>()
            .AddSingleton<LinkAnswers>()
            .AddScoped<PracticeWork>()
            .AddScoped<LetterWork>()
            .AddScoped<Data.Books.AddressLetters>()
            .AddScoped<Reckoner>()
            .AddSingleton<NightlyKeeping>()
            .AddHostedService(services => services.GetRequiredService<NightlyKeeping>())
            .AddHostedService<ReckoningLoop>()
            .AddHostedService<WorkLoop>()
            .AddHostedService<MailNotice>()
            .AddHostedService<DiskWatch>();
}
