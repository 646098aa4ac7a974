using System.Net;
using System.Net.Sockets;
using System.Threading.RateLimiting;
using HairClinic.Web.Fence;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.AspNetCore.StaticAssets;

namespace HairClinic.Web.Shell.Limits;

/// <summary>How often who may ask for what. Counted in this process: two servers side by side allow twice as much.</summary>
/// <remarks>A salon stands behind one address with twenty or thirty devices and its guests' phones: what is counted by address is generous.</remarks>
public static class RateLimits
{
    private const string Everybody = "all";

    private static readonly TimeSpan Window = TimeSpan.FromMinutes(10);

    public static IServiceCollection AddRateLimits(this IServiceCollection services) =>
        services.AddRateLimiter(options =>
        {
            options.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
            options.OnRejected = RefuseAsync;
            // Narrow counts come first: whoever is refused by one does not use up the wider ones.
            options.GlobalLimiter = PartitionedRateLimiter.CreateChained(
                By(NameAt),
                By(Name),
                By(Asker),
                By(Costly),
                By(Anything),
                By(Circuits)
            );
        });

    private static PartitionedRateLimiter<HttpContext> By(Func<HttpContext, RateLimitPartition<string>> partition) =>
        PartitionedRateLimiter.Create(partition);

    /// <summary>One name tried from one place: twenty times in ten minutes.</summary>
    private static RateLimitPartition<string> NameAt(HttpContext context) =>
        LimitForRequest(context) is { Limited: LimitedAction.SignIn } && Tried(context) is { } name
            ? Sliding($"{name}@{RemoteNetwork.For(context)}", 20)
            : None();

    /// <summary>
    /// One name, wherever it is tried from. Wide enough for sign-in that a stranger cannot lock its owner out cheaply; narrow for
    /// letters, which would fill somebody's mailbox. Whether anybody has the name makes no difference. Between password and code the
    /// name is the account's, and of somebody signed in it is themselves.
    /// </summary>
    private static RateLimitPartition<string> Name(HttpContext context) =>
        (LimitForRequest(context)?.Limited, Tried(context)) switch
        {
            (LimitedAction.SignIn, { } name) => Sliding($"in {name}", 60),
            (LimitedAction.AskLink, { } name) => Sliding($"ask {name}", 4),
            _ => None(),
        };

    /// <summary>Who asks for limited things: the person where known, else their address.</summary>
    private static RateLimitPartition<string> Asker(HttpContext context) =>
        LimitForRequest(context)?.Limited switch
        {
            LimitedAction.SignIn => Sliding($"in {RemoteNetwork.For(context)}", 150),
            LimitedAction.AskLink => Sliding($"ask {RemoteNetwork.For(context)}", 40),
            LimitedAction.UseLink => Sliding($"use {RemoteNetwork.For(context)}", 60),
            LimitedAction.Upload => Sliding($"up {Who(context)}", 120),
            LimitedAction.Export => Sliding($"out {Who(context)}", 40),
            _ => None(),
        };

    /// <summary>Four heavy things at once, the next sixteen wait: the day's work goes on beside them.</summary>
    private static RateLimitPartition<string> Costly(HttpContext context) =>
        LimitForRequest(context)?.Limited is LimitedAction.Upload or LimitedAction.Export
            ? RateLimitPartition.GetConcurrencyLimiter(Everybody, _ => new() { PermitLimit = 4, QueueLimit = 16 })
            : None();

    /// <summary>Everything but files that never change: twenty a second for a person, a hundred for an address nobody signed in at.</summary>
    private static RateLimitPartition<string> Anything(HttpContext context) =>
        context.GetEndpoint()?.Metadata.GetMetadata<StaticAssetDescriptor>() is not null ? None()
        : Person(context) is { } person ? Bucket(person, burst: 300, perSecond: 20)
        : Bucket(RemoteNetwork.For(context), burst: 1500, perSecond: 100);

    /// <summary>Live screens open at once: a lease lasts as long as its connection. Thirty are more tabs than anyone reads.</summary>
    private static RateLimitPartition<string> Circuits(HttpContext context) =>
        !SameOriginOnly.IsBlazorRequest(context) ? None()
        : Person(context) is { } person ? RateLimitPartition.GetConcurrencyLimiter(person, _ => new() { PermitLimit = 30 })
        : RateLimitPartition.GetConcurrencyLimiter(RemoteNetwork.For(context), _ => new() { PermitLimit = 200 });

    private static RateLimitPartition<string> Sliding(string key, int permits) =>
        RateLimitPartition.GetSlidingWindowLimiter(
            key,
            _ =>
                new()
                {
                    PermitLimit = permits,
                    Window = Window,
                    SegmentsPerWindow = 10,
                }
        );

    private static RateLimitPartition<string> Bucket(string key, int burst, int perSecond) =>
        RateLimitPartition.GetTokenBucketLimiter(
            key,
            _ =>
                new()
                {
                    TokenLimit = burst,
                    TokensPerPeriod = perSecond,
                    ReplenishmentPeriod = TimeSpan.FromSeconds(1),
                }
        );

    private static RateLimitPartition<string> None() => RateLimitPartition.GetNoLimiter(Everybody);

    private static RateLimitedAttribute? LimitForRequest(HttpContext context) => TriedNameHashMiddleware.LimitForRequest(context);

    private static string Who(HttpContext context) => Person(context) ?? RemoteNetwork.For(context);

    private static string? Person(HttpContext context) => ActorClaims.ToActor(context.User)?.Id?.ToString();

    private static string? Tried(HttpContext context) => TriedNameHashMiddleware.HashFor(context) ?? Person(context);

    private static async ValueTask RefuseAsync(OnRejectedContext rejected, CancellationToken cancellation)
    {
        var http = rejected.HttpContext;
        var wait = rejected.Lease.TryGetMetadata(MetadataName.RetryAfter, out var after) && after > TimeSpan.Zero ? after : WaitFor(http);
        await SayTryLaterAsync(http, wait, busy: false);
    }

    /// <summary>Answers with a page that says when to come back, and writes down that it did.</summary>
    /// <param name="busy">Because of many others, not of whoever asks.</param>
    public static async Task SayTryLaterAsync(HttpContext http, TimeSpan wait, bool busy)
    {
        var seconds = (int)Math.Ceiling(wait.TotalSeconds);
        http.Response.Headers.RetryAfter = seconds.ToString(CultureInfo.InvariantCulture);
        http.RequestServices.GetRequiredService<RefusalLog>().RecordTooOften(http, LimitForRequest(http)?.Limited);
        if (SameOriginOnly.IsBlazorRequest(http))
            return;
        var page = new RazorComponentResult<TooOftenDocument>(new { Seconds = seconds, Busy = busy })
        {
            StatusCode = StatusCodes.Status429TooManyRequests,
        };
        await page.ExecuteAsync(http);
    }

    // A sliding window cannot say when it has room again; a tenth of it always frees something or shows that it did not.
    private static TimeSpan WaitFor(HttpContext context) => LimitForRequest(context) is null ? TimeSpan.FromSeconds(5) : Window / 10;
}

/// <summary>What is limited, each with its own count.</summary>
public enum LimitedAction
{
    /// <summary>Proving who one is: password, code, PIN.</summary>
    SignIn,

    /// <summary>Having a link sent.</summary>
    AskLink,

    /// <summary>Trying a link, or a code that opens something.</summary>
    UseLink,

    Upload,

    /// <summary>Taking out much at once.</summary>
    Export,
}

/// <summary>The place a request came from, as it is counted: one connection to the internet, whatever address in it was used.</summary>
public static class RemoteNetwork
{
    private const int NetworkBytes = 8;

    public static string For(HttpContext context) => For(context.Connection.RemoteIpAddress);

    /// <remarks>
    /// An IPv6 connection is given 2^64 addresses at least (RFC 4291, section 2.5.4), and whoever has it takes a new one as they like:
    /// its first 64 bits are the place. IPv4 as a socket for both kinds shows it (section 2.5.5.2) is IPv4.
    /// </remarks>
    public static string For(IPAddress? address)
    {
        if (address is null)
            return "?";
        if (address.IsIPv4MappedToIPv6)
            address = address.MapToIPv4();
        if (address.AddressFamily != AddressFamily.InterNetworkV6)
            return address.ToString();
        var bytes = address.GetAddressBytes();
        bytes.AsSpan(NetworkBytes).Clear();
        return $"{new IPAddress(bytes)}/64";
    }
}
