using HairClinic.Web.Shell.Limits;
using Microsoft.AspNetCore.StaticAssets;

namespace HairClinic.Web.Shell;

/// <summary>No browser keeps a page: the next one at this screen does not find it by going back. Signing out empties what is kept otherwise.</summary>
public static class NoBrowserCache
{
    public static void UseNoBrowserCache(this WebApplication app) =>
        app.Use(
            (context, next) =>
            {
                var isFile = context.GetEndpoint()?.Metadata.GetMetadata<StaticAssetDescriptor>() is not null;
                if (!isFile)
                    context.Response.OnStarting(() =>
                    {
                        context.Response.Headers.CacheControl = "no-store";
                        context.Response.Headers.Remove("Pragma");
                        if (IsSignOut(context.Request))
                            context.Response.Headers["Clear-Site-Data"] = "\"cache\"";
                        return Task.CompletedTask;
                    });
                return next(context);
            }
        );

    private static bool IsSignOut(HttpRequest request) =>
        HttpMethods.IsPost(request.Method)
        && (
            request.Path.Value?.EndsWith("/sign-out", StringComparison.Ordinal) == true
            // A client's own page has its buttons among the preferences.
            || request.Path == "/my-hair/preferences"
                && VerifiedFormReader.Read(request.HttpContext)?["_handler"].ToString().StartsWith("sign-out", StringComparison.Ordinal)
                    == true
        );
}
