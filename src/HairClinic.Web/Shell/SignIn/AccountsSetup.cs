using HairClinic.Web.Accounts;
using HairClinic.Web.Accounts.Tablets;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Work;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server;
using Microsoft.AspNetCore.Components.Server.Circuits;
using Microsoft.AspNetCore.DataProtection;

namespace HairClinic.Web.Shell.SignIn;

public static class AccountsSetup
{
    /// <summary>The cookie of a client, apart from the staff's: a shared phone and a desk never mix.</summary>
    public const string ClientScheme = "client";

    /// <summary>The cookie between password and code, as Identity names it; a constant, for attributes.</summary>
    public const string HalfScheme = "Identity.TwoFactorUserId";

    public static IServiceCollection AddAccounts(this IServiceCollection services)
    {
        services.AddScoped(sp => sp.GetRequiredService<ClinicDbFactory>().OpenWithoutActor());
        services
            .AddScoped<SessionStore>()
            .AddScoped<StepUpCheck>()
            .AddScoped<SecondFactorStore>()
            .AddScoped<SignInTries>()
            .AddSingleton<HashingQueue>()
            .AddScoped<TabletStore>()
            .AddScoped<PinStore>()
            .AddScoped<AccountNotices>()
            .AddScoped<AddressChangeNotices>()
            .AddSingleton<SignInDelay>()
            .AddScoped<CircuitActivityTracker>()
            .AddScoped<CircuitHandler>(sp => sp.GetRequiredService<CircuitActivityTracker>())
            .AddScoped<AccountStore>()
            .AddScoped<IPasswordValidator<AppUser>, PasswordValidator>()
            .AddSingleton<AccountPasswordHasher>()
            .AddSingleton<IPasswordHasher<AppUser>>(sp => sp.GetRequiredService<AccountPasswordHasher>());
        services
            .AddIdentityCore<AppUser>(options =>
            {
                options.Lockout.MaxFailedAccessAttempts = 8;
                // Long enough to stop guessing, short enough that a stranger keeps nobody out; a passkey opens meanwhile.
                options.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromMinutes(10);
                options.Stores.SchemaVersion = IdentitySchemaVersions.Version3;
            })
            .AddEntityFrameworkStores<ClinicDb>()
            .AddClaimsPrincipalFactory<PersonClaimsFactory>()
            .AddSignInManager<StaffSignInManager>()
            .AddDefaultTokenProviders()
            .AddTokenProvider<OwnerTokenProvider>(OwnerTokenProvider.Provider);
        services.AddScoped<IUserStore<AppUser>>(sp => sp.GetRequiredService<AccountStore>());
        // The OWASP cheat sheet on password storage asks for this many rounds of PBKDF2 with SHA-512.
        services.Configure<PasswordHasherOptions>(o => o.IterationCount = 210_000);
        AddPasskeys(services);
        AddCookies(services);
        services.Configure<SecurityStampValidatorOptions>(o =>
        {
            o.ValidationInterval = TimeSpan.FromMinutes(1);
            o.OnRefreshingPrincipal = SessionCookieValidator.CopySessionClaimsAsync;
        });
        services.AddSingleton<ClientSessionStore>();
        // Nothing lives on after a client's page is written, so nobody is asked again there.
        services.AddScoped<ActorRevalidator>();
        services.AddScoped<AuthenticationStateProvider>(sp =>
            ClientPageDocument.Serves(sp.GetRequiredService<IHttpContextAccessor>().HttpContext?.GetEndpoint())
                ? new ServerAuthenticationStateProvider()
                : sp.GetRequiredService<ActorRevalidator>()
        );
        services.AddCascadingAuthenticationState();
        services.AddAuthorization(Policies.Register);
        services.AddDataProtection().SetApplicationName("HairClinic").PersistKeysToDbContext<ClinicDb>();
        return services;
    }

    private static void AddCookies(IServiceCollection services)
    {
        services
            .AddAuthentication(IdentityConstants.ApplicationScheme)
            .AddCookie(
                IdentityConstants.ApplicationScheme,
                options =>
                {
                    Harden(options, "clinic", "/sign-in", "/refused");
                    // The sign-in's own row decides; this only bounds it.
                    options.ExpireTimeSpan = TimeSpan.FromHours(12);
                    options.Events.OnValidatePrincipal = SessionCookieValidator.ValidateAsync;
                    var toSignIn = options.Events.OnRedirectToLogin;
                    options.Events.OnRedirectToLogin = context =>
                    {
                        // Whoever comes next at a shared tablet is led to the visit that was open, and to nothing else of the one before.
                        if (context.HttpContext.RequestServices.GetRequiredService<TabletStore>().IsCarried)
                            context.RedirectUri = TabletStore.SwitchPath(context.Request.Path);
                        return toSignIn(context);
                    };
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
            )
            // Between password and code, and while a passkey is asked for.
            .AddCookie(
                IdentityConstants.TwoFactorUserIdScheme,
                options =>
                {
                    Harden(options, "second", "/sign-in", "/refused");
                    options.ExpireTimeSpan = TimeSpan.FromMinutes(5);
                    options.SlidingExpiration = false;
                }
            );
        foreach (var scheme in new[] { IdentityConstants.ApplicationScheme, ClientScheme, IdentityConstants.TwoFactorUserIdScheme })
            services
                .AddOptions<CookieAuthenticationOptions>(scheme)
                .Configure<IConfiguration>(
                    (options, configuration) =>
                    {
                        var always = configuration.GetValue<bool>("SignIn:BehindTls");
                        options.CookieManager = new HostPrefixCookies(always);
                        if (always)
                            options.Cookie.SecurePolicy = CookieSecurePolicy.Always;
                    }
                );
    }

    private static void AddPasskeys(IServiceCollection services) =>
        services
            .AddOptions<IdentityPasskeyOptions>()
            .Configure<IConfiguration, SiteAddress>(
                (options, configuration, site) =>
                {
                    // A passkey alone opens: it must be found without a name, and unlocked by its owner.
                    options.ResidentKeyRequirement = "required";
                    options.UserVerificationRequirement = "required";
                    options.ServerDomain =
                        configuration["SignIn:ServerDomain"] is { Length: > 0 } named ? named
                        : site.Set is { HostNameType: UriHostNameType.Dns } own ? own.IdnHost
                        : null;
                }
            );

    private static void Harden(CookieAuthenticationOptions options, string cookie, string signIn, string refused)
    {
        options.Cookie.Name = cookie;
        options.Cookie.HttpOnly = true;
        options.Cookie.Path = "/";
        options.Cookie.SameSite = SameSiteMode.Lax;
        options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        options.LoginPath = signIn;
        options.AccessDeniedPath = refused;
        options.SlidingExpiration = true;
    }
}
