using HairClinic.Web.Practices;
using HairClinic.Web.Shell;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;

namespace HairClinic.Web.Data.Accounts;

public static class AccountsSetup
{
    /// <summary>The cookie of a client, apart from the staff's: a shared phone and a desk never mix.</summary>
    public const string ClientScheme = "client";

    public static IServiceCollection AddAccounts(this IServiceCollection services)
    {
        services.AddScoped(sp => sp.GetRequiredService<ClinicDbFactory>().OpenUnfenced());
        services
            .AddIdentityCore<AppUser>(options =>
            {
                // NIST SP 800-63B-4: length counts, composition rules do not.
                options.Password.RequiredLength = 15;
                options.Password.RequireDigit = false;
                options.Password.RequireLowercase = false;
                options.Password.RequireUppercase = false;
                options.Password.RequireNonAlphanumeric = false;
                options.Password.RequiredUniqueChars = 5;
                options.Lockout.MaxFailedAccessAttempts = 8;
                options.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromMinutes(10);
                options.Stores.SchemaVersion = IdentitySchemaVersions.Version3;
            })
            .AddEntityFrameworkStores<ClinicDb>()
            .AddClaimsPrincipalFactory<PersonClaims>()
            .AddSignInManager()
            .AddDefaultTokenProviders();
        services
            .AddAuthentication(IdentityConstants.ApplicationScheme)
            .AddCookie(
                IdentityConstants.ApplicationScheme,
                options =>
                {
                    Harden(options, "clinic", "/sign-in", "/refused");
                    options.ExpireTimeSpan = TimeSpan.FromHours(12);
                    options.Events.OnValidatePrincipal = SecurityStampValidator.ValidatePrincipalAsync;
                }
            )
            .AddCookie(
                ClientScheme,
                options =>
                {
                    Harden(options, "own", "/my-hair/ask-link", "/my-hair/ask-link");
                    options.ExpireTimeSpan = TimeSpan.FromDays(30);
                    options.Events.OnValidatePrincipal = ClientCookie.ValidateAsync;
                }
            );
        services.Configure<SecurityStampValidatorOptions>(o => o.ValidationInterval = TimeSpan.FromMinutes(1));
        services.AddSingleton<ClientSignIns>();
        // Nothing lives on after a client's page is written, so nobody is asked again there.
        services.AddScoped<RevalidatingActor>();
        services.AddScoped<AuthenticationStateProvider>(sp =>
            OwnDocument.Serves(sp.GetRequiredService<IHttpContextAccessor>().HttpContext?.GetEndpoint())
                ? new ServerAuthenticationStateProvider()
                : sp.GetRequiredService<RevalidatingActor>()
        );
        services.AddCascadingAuthenticationState();
        services.AddAuthorization(Policies.Register);
        services.AddDataProtection().SetApplicationName("HairClinic").PersistKeysToDbContext<ClinicDb>();
        return services;
    }

    private static void Harden(CookieAuthenticationOptions options, string cookie, string signIn, string refused)
    {
        options.Cookie.Name = cookie;
        options.Cookie.HttpOnly = true;
        options.Cookie.SameSite = SameSiteMode.Lax;
        options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        options.LoginPath = signIn;
        options.AccessDeniedPath = refused;
        options.SlidingExpiration = true;
    }
}
