using HairClinic.Web.AccessLog;
using HairClinic.Web.CommandLine;
using HairClinic.Web.Data;
using HairClinic.Web.Demo;
using HairClinic.Web.Features.Accounts;
using HairClinic.Web.Features.Binder;
using HairClinic.Web.Features.Clients;
using HairClinic.Web.Features.Lasting;
using HairClinic.Web.Features.MyHair;
using HairClinic.Web.Features.Outlook;
using HairClinic.Web.Features.Privacy;
using HairClinic.Web.Features.Settings;
using HairClinic.Web.Features.Units;
using HairClinic.Web.Features.Visits;
using HairClinic.Web.Features.Wear;
using HairClinic.Web.Fence;
using HairClinic.Web.Mail;
using HairClinic.Web.Privacy;
using HairClinic.Web.Shell;
using HairClinic.Web.Shell.Logs;
using HairClinic.Web.Shell.SignIn;
using HairClinic.Web.Workers;

namespace HairClinic.Web;

/// <summary>The program's table of contents: what it is made of, and which areas answer where.</summary>
public static class Clinic
{
    public static IServiceCollection AddClinic(this IServiceCollection services) =>
        services
            .AddFence()
            .AddClinicData()
            .AddAccessLog()
            .AddMail()
            .AddAccounts()
            .AddPrivacy()
            .AddWorkers()
            .AddShell()
            .AddAccountsArea()
            .AddClients()
            .AddUnits()
            .AddVisits()
            .AddWear()
            .AddLasting()
            .AddOutlook()
            .AddSettings()
            .AddBinder()
            .AddPrivacyArea()
            .AddMyHair()
            .AddDemo()
            .AddSingleton<KeyRotation>();

    /// <param name="hostArguments">Host settings such as --urls or --data.</param>
    public static WebApplication Build(string[] hostArguments)
    {
        var builder = WebApplication.CreateBuilder(hostArguments);
        // So that a build run from its sources finds its own files, whatever the environment is called.
        builder.WebHost.UseStaticWebAssets();
        builder.Logging.AddDiscreetConsole();
        builder.Services.AddClinic();
        // Before the framework's own, which looks at hosts.
        builder.Services.Insert(0, ServiceDescriptor.Transient<IStartupFilter, HealthProbeHostFilter>());

        var app = builder.Build();
        app.UseShell(early => early.UseMiddleware<FirstRunGate>());
        app.MapStartRedirect();
        app.MapAccounts();
        app.MapMyHair();
        app.MapBinder();
        app.MapClients();
        app.MapUnits();
        app.MapLasting();
        app.MapOutlook();
        app.MapSettings();
        app.MapPrivacy();
        return app;
    }
}
