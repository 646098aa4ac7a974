using System.Net.Mime;
using HairClinic.Domain.Practices;
using HairClinic.Web.Shell;
using HairClinic.Web.Shell.Limits;
using Microsoft.Net.Http.Headers;

namespace HairClinic.Web.Features.Privacy.TakeOut;

/// <summary>The archive itself.</summary>
public static class TakeOutEndpoint
{
    public static string Address(Guid clientId) => $"/clients/{clientId}/take-out/file";

    public static void MapTakeOut(this IEndpointRouteBuilder routes) =>
        routes
            .MapGet("/clients/{clientId:guid}/take-out/file", WriteAsync)
            .RequireAuthorization(Policies.Manage)
            .WithMetadata(new StepUpAttribute(), new LimitedAttribute(Limited.Export));

    private static async Task WriteAsync(Guid clientId, TakeOut slice, HttpContext context)
    {
        try
        {
            if (!await slice.WriteAsync(clientId, Begin, context.RequestAborted))
                context.Response.StatusCode = StatusCodes.Status404NotFound;
        }
        catch (Refusal) when (!context.Response.HasStarted)
        {
            context.Response.StatusCode = StatusCodes.Status413PayloadTooLarge;
        }

        Stream Begin(string name)
        {
            context.Response.ContentType = MediaTypeNames.Application.Zip;
            context.Response.Headers.CacheControl = "no-store";
            var disposition = new ContentDispositionHeaderValue("attachment");
            disposition.SetHttpFileName(name);
            context.Response.Headers.ContentDisposition = disposition.ToString();
            // The archive writes its headers without awaiting, which the body itself refuses.
            return context.Response.BodyWriter.AsStream(leaveOpen: true);
        }
    }
}
