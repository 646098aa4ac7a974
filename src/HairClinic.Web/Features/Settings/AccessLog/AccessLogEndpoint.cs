using HairClinic.Web.Data.Rows;
using HairClinic.Web.Shell;
using HairClinic.Web.Shell.Limits;

namespace HairClinic.Web.Features.Settings;

/// <summary>The access log as a download.</summary>
public static class AccessLogEndpoint
{
    public static void MapAccessLog(this IEndpointRouteBuilder routes) =>
        routes
            .MapGet(
                "/practice/access-log/lines.csv",
                async (string? code, Guid? person, AccessAction? deed, AccessLog slice, HttpContext context) =>
                {
                    var file = await slice.ExportCsvAsync(new(code, person, deed, Before: null), context.RequestAborted);
                    context.Response.Headers.CacheControl = "no-store";
                    return Results.File(file, "text/csv; charset=utf-8", "access-log.csv");
                }
            )
            .RequireAuthorization(Policies.Owner)
            .WithMetadata(new StepUpAttribute(), new RateLimitedAttribute(LimitedAction.Export));
}
