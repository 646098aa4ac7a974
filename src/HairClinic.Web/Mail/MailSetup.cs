namespace HairClinic.Web.Mail;

public static class MailSetup
{
    /// <summary>The ways a letter leaves.</summary>
    public static IServiceCollection AddMail(this IServiceCollection services) =>
        services
            .AddSingleton(sp => MailSettings.ReadFrom(sp.GetRequiredService<IConfiguration>()))
            .AddSingleton(sp => sp.GetRequiredService<MailSettings>().Letters(sp.GetRequiredService<IClock>()))
            .AddSingleton<FolderRoute>()
            .AddSingleton<SmtpRoute>()
            .AddSingleton<MailRoute>()
            .AddSingleton<IMailRoute>(sp => sp.GetRequiredService<MailRoute>())
            .AddSingleton<MailStatus>()
            .AddHostedService<MailNotice>();
}
