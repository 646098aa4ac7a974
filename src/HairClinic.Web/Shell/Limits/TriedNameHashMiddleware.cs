using System.Security.Claims;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Components.Endpoints;

namespace HairClinic.Web.Shell.Limits;

/// <summary>Reads, before the limits are counted, the name, address or account a form tries. It is kept as a hash and only for the count.</summary>
public sealed class TriedNameHashMiddleware(RequestDelegate next)
{
    // Longer than any name or address we take: a long one is not hashed for whoever sends it.
    private const int Longest = 320;

    public async Task InvokeAsync(HttpContext context)
    {
        if (LimitForRequest(context)?.Cookie is { } cookie)
        {
            if ((await context.AuthenticateAsync(cookie)).Principal?.FindFirstValue(ClaimTypes.Name) is { } account)
                context.Items[typeof(TriedNameHashMiddleware)] = Hash(account);
        }
        else if (LimitForRequest(context)?.Field is { } field && context.Request.HasFormContentType)
        {
            try
            {
                var form = await context.Request.ReadFormAsync(context.RequestAborted);
                if (form[field].ToString().Trim() is { Length: > 0 and <= Longest } name)
                    context.Items[typeof(TriedNameHashMiddleware)] = Hash(name.ToUpperInvariant());
            }
            catch (Exception e) when (e is InvalidDataException or IOException)
            {
                // No form anybody can read: whoever handles it refuses it, and the address still counts.
            }
        }
        await next(context);
    }

    public static string? HashFor(HttpContext context) => context.Items[typeof(TriedNameHashMiddleware)] as string;

    /// <summary>The limit that counts here: looking at a page is free, an endpoint's every call is not.</summary>
    public static RateLimitedAttribute? LimitForRequest(HttpContext context)
    {
        var metadata = context.GetEndpoint()?.Metadata;
        var limit = metadata?.GetMetadata<RateLimitedAttribute>();
        var isLook = metadata?.GetMetadata<ComponentTypeMetadata>() is not null && !HttpMethods.IsPost(context.Request.Method);
        return isLook ? null : limit;
    }

    private static string Hash(string name) => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(name)));
}
