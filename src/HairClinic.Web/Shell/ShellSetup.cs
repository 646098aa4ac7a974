using System.Globalization;
using Microsoft.AspNetCore.Localization;

namespace HairClinic.Web.Shell;

public static class ShellSetup
{
    /// <summary>Pages, words and the frame around them.</summary>
    public static IServiceCollection AddShell(this IServiceCollection services)
    {
        services.AddRazorComponents().AddInteractiveServerComponents();
        services.AddLocalization();
        services.AddMemoryCache();
        services.AddHttpContextAccessor();
        services.AddScoped<ShellFactsHolder>();
        services.AddScoped<Data.Books.CultureBook>();
        services.AddCascadingValue(sp => sp.GetRequiredService<ShellFactsHolder>().Facts);
        services.Configure<RequestLocalizationOptions>(options =>
        {
            // The shared, read-only ones: patterns for dates are kept only for those.
            CultureInfo[] cultures = [.. new[] { "en-GB", "en-US", "en-IE", "es-ES", "es" }.Select(CultureInfo.GetCultureInfo)];
            options.DefaultRequestCulture = new RequestCulture(cultures[0]);
            options.SupportedCultures = cultures;
            options.SupportedUICultures = cultures;
            options.RequestCultureProviders =
            [
                new CustomRequestCultureProvider(Languages.OfAsync),
                new AcceptLanguageHeaderRequestCultureProvider(),
            ];
        });
        services.AddResponseCompression();
        return services;
    }

    public static void UseShell(this WebApplication app)
    {
        app.UseResponseCompression();
        app.UseWhen(
            context => HttpMethods.IsGet(context.Request.Method),
            gets => gets.UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true)
        );
        if (!app.Environment.IsDevelopment())
            app.UseExceptionHandler("/mishap", createScopeForErrors: true);
        // After the pages that stand in for an error: what they re-execute must find its page anew.
        app.UseRouting();
        app.UseSecurityHeaders(SecurityHeaders.Policy());
        app.UseRequestLocalization();
        app.UseAuthentication();
        app.UseMiddleware<Features.Practices.FirstRun.FirstRunGate>();
        app.UseAuthorization();
        app.UseMiddleware<Practices.ActorMiddleware>();
        app.UseMiddleware<StaffCulture>();
        app.UseMiddleware<ShellFactsReader>();
        app.UseAntiforgery();
        app.MapStaticAssets().AllowAnonymous();
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(o => o.ContentSecurityFrameAncestorsPolicy = "'none'");
        app.MapStartPage();
        app.MapGet("/alive", () => "alive").AllowAnonymous();
    }
}
