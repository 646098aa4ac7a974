using System.Net.Mime;
using HairClinic.Domain.Practices;
using HairClinic.Web.Shell;
using HairClinic.Web.Shell.Limits;

namespace HairClinic.Web.Features.MyHair.TakeMyData;

/// <summary>The archive itself. Its name tells nothing.</summary>
public static class TakeMyDataEndpoint
{
    public const string Address = "/my-hair/take-my-data/file";

    public static void MapTakeMyData(this IEndpointRouteBuilder routes) =>
        routes
            .MapGet(Address, WriteAsync)
            .RequireAuthorization(Policies.Client)
            .WithMetadata(new StepUpAttribute(), new LimitedAttribute(Limited.Export));

    private static async Task WriteAsync(TakeMyData slice, HttpContext context)
    {
        try
        {
            if (!await slice.WriteAsync(Begin, context.RequestAborted))
                context.Response.StatusCode = StatusCodes.Status404NotFound;
        }
        catch (Refusal) when (!context.Response.HasStarted)
        {
            context.Response.StatusCode = StatusCodes.Status413PayloadTooLarge;
        }

        Stream Begin()
        {
            context.Response.ContentType = MediaTypeNames.Application.Zip;
            context.Response.Headers.CacheControl = "no-store";
            context.Response.Headers.XContentTypeOptions = "nosniff";
            context.Response.Headers.ContentDisposition = "attachment; filename=\"my-data.zip\"";
            // The archive writes its headers without awaiting, which the body itself refuses.
            return context.Response.BodyWriter.AsStream(leaveOpen: true);
        }
    }
}
