using HairClinic.Web.Shell;
using HairClinic.Web.Shell.Limits;
using Microsoft.Net.Http.Headers;

namespace HairClinic.Web.Features.Privacy;

/// <summary>The archive itself.</summary>
public static class TakeOutEndpoint
{
    public static string Address(Guid clientId) => $"/clients/{clientId}/take-out/file";

    public static void MapTakeOut(this IEndpointRouteBuilder routes) =>
        routes
            .MapGet("/clients/{clientId:guid}/take-out/file", WriteAsync)
            .RequireAuthorization(Policies.Manage)
            .WithMetadata(new StepUpAttribute(), new RateLimitedAttribute(LimitedAction.Export));

    private static Task WriteAsync(Guid clientId, TakeOut slice, HttpContext context) =>
        FileResults.WriteArchiveAsync(
            context,
            begin => slice.WriteAsync(clientId, name => begin(AttachedAs(name)), context.RequestAborted)
        );

    private static string AttachedAs(string name)
    {
        var disposition = new ContentDispositionHeaderValue("attachment");
        disposition.SetHttpFileName(name);
        return disposition.ToString();
    }
}
