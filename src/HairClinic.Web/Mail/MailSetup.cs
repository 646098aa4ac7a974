namespace HairClinic.Web.Mail;

public static class MailSetup
{
    /// <summary>The ways a letter leaves.</summary>
    public static IServiceCollection AddMail(this IServiceCollection services) =>
        services
            .AddSingleton(sp => MailSettings.ReadFrom(sp.GetRequiredService<IConfiguration>()))
            .AddSingleton(sp => sp.GetRequiredService<MailSettings>().CreateLetterFolder(sp.GetRequiredService<IClock>()))
            .AddSingleton<FolderMailSender>()
            .AddSingleton<SmtpMailSender>()
            .AddSingleton<MailSenderSelector>()
            .AddSingleton<IMailSender>(sp => sp.GetRequiredService<MailSenderSelector>())
            .AddSingleton<MailStatusMonitor>()
            .AddHostedService<MailStartupNotice>();
}
