using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Fence;
using HairClinic.Web.Language;
using HairClinic.Web.Shell.Limits;
using HairClinic.Web.Shell.Logs;
using HairClinic.Web.Ui;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Localization;

namespace HairClinic.Web.Shell;

public static class ShellSetup
{
    /// <summary>What a live page says instead of breaking.</summary>
    public static readonly PageFaultClassifier Faults = new(e =>
        e is StaleActorException ? PageFaultKind.AccessEnded
        : ConnectionLoss.Is(e) ? PageFaultKind.BookAway
        : PageFaultKind.None
    );

    /// <summary>Pages, words and the frame around them.</summary>
    public static IServiceCollection AddShell(this IServiceCollection services)
    {
        services.AddRazorComponents().AddInteractiveServerComponents();
        services.AddLocalization();
        services.AddMemoryCache();
        services.AddSingleton<SiteAddress>();
        services.AddHttpContextAccessor();
        services.AddScoped<ShellFactsHolder>();
        services.AddScoped<CircuitCancellation>();
        services.AddSingleton(Faults);
        services.AddScoped<Ui.Fields.UnreadableFields>();
        services.AddScoped<PracticeCultureCache>();
        services.AddCascadingValue(_ => new Ui.Feedback.LastTappedButton());
        services.AddCascadingValue(sp => sp.GetRequiredService<ShellFactsHolder>().Facts);
        services.Configure<RequestLocalizationOptions>(options =>
        {
            // The shared, read-only ones: patterns for dates are kept only for those.
            // A browser may name a language without a country; English without one is British, which stands first.
            var codes = Languages.All.Select(l => l.Code).Concat(Languages.Spoken.Select(l => l.Code).Where(code => code != "en"));
            CultureInfo[] cultures = [.. codes.Select(CultureInfo.GetCultureInfo)];
            options.DefaultRequestCulture = new RequestCulture(cultures[0]);
            options.SupportedCultures = cultures;
            options.SupportedUICultures = cultures;
            options.RequestCultureProviders =
            [
                new CustomRequestCultureProvider(Languages.FromCookieAsync),
                new AcceptLanguageHeaderRequestCultureProvider(),
            ];
        });
        services.AddResponseCompression();
        services.AddAntiforgery(options =>
        {
            options.Cookie.Name = "form";
            options.Cookie.SameSite = SameSiteMode.Strict;
            options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        });
        // A browser that reconnects in the moment of stopping is a request that ends only then: nobody waits half a minute for it.
        services.Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromSeconds(10));
        services.AddSingleton<Outage>().AddHostedService<DatabaseRecoveryWatch>();
        services.AddSingleton<RefusalLog>();
        services.AddSingleton<IAuthorizationMiddlewareResultHandler>(sp => sp.GetRequiredService<RefusalLog>());
        return services.AddProxies().AddRateLimits().AddRequestSizeLimits().AddCircuitLimits();
    }

    /// <param name="early">What comes before anybody is refused: a practice that is not set up yet.</param>
    public static void UseShell(this WebApplication app, Action<WebApplication> early)
    {
        app.UseProxies();
        app.UseResponseCompression();
        app.UseWhen(
            context => HttpMethods.IsGet(context.Request.Method),
            gets => gets.UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true)
        );
        if (!app.Environment.IsDevelopment())
            app.UseExceptionHandler("/error", createScopeForErrors: true);
        app.Use(OnlyLook);
        // After the pages that stand in for an error: what they re-execute must find its page anew.
        app.UseRouting();
        app.UseSecurityHeaders(SecurityHeaders.BuildHeaders());
        app.UseNoBrowserCache();
        app.UseMiddleware<DatabaseOutageMiddleware>();
        app.Use(SameOriginOnly.CheckAsync);
        app.UseRequestLocalization();
        app.Use(RequestLimits.RefuseTooLargeAsync);
        app.UseAuthentication();
        early(app);
        app.UseAuthorization();
        app.UseMiddleware<Fence.ActorMiddleware>();
        app.UseMiddleware<StaleActorMiddleware>();
        app.UseMiddleware<SignInBusyMiddleware>();
        // After the sign-in is known, so that a person is counted as a person; before anything costly.
        app.UseMiddleware<TriedNameHashMiddleware>();
        app.UseRateLimiter();
        app.Use(QueryParameterTypeCheck.CheckAsync);
        app.UseMiddleware<ConfirmedAddressGate>();
        app.UseMiddleware<StepUpGate>();
        app.UseMiddleware<StaffCultureMiddleware>();
        app.UseMiddleware<ShellFactsMiddleware>();
        app.Use(FileFormReader.ReadAsync);
        app.UseAntiforgery();
        app.Use(RefusalLog.NoticeForgedAsync);
        app.Use(NullCharacterCheck.CheckAsync);
        app.MapStaticAssets().AllowAnonymous();
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(o => o.ContentSecurityFrameAncestorsPolicy = "'none'");
        app.MapProbes();
    }

    // The page that stands in for a fault is only looked at, also where a form broke: there is no mark to ask it for.
    private static Task OnlyLook(HttpContext context, RequestDelegate next)
    {
        if (context.Features.Get<IExceptionHandlerFeature>() is not null)
            context.Request.Method = HttpMethods.Get;
        return next(context);
    }
}
