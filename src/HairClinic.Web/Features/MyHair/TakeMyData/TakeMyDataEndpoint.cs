using HairClinic.Web.Shell;
using HairClinic.Web.Shell.Limits;

namespace HairClinic.Web.Features.MyHair;

/// <summary>The archive itself. Its name tells nothing.</summary>
public static class TakeMyDataEndpoint
{
    public const string Address = "/my-hair/take-my-data/file";

    public static void MapTakeMyData(this IEndpointRouteBuilder routes) =>
        routes
            .MapGet(Address, WriteAsync)
            .RequireAuthorization(Policies.Client)
            .WithMetadata(new ConfirmedOnlyAttribute(), new StepUpAttribute(), new LimitedAttribute(Limited.Export));

    private static Task WriteAsync(TakeMyData slice, HttpContext context) =>
        FileAnswers.WriteArchiveAsync(
            context,
            begin => slice.WriteAsync(() => begin("attachment; filename=\"my-data.zip\""), context.RequestAborted)
        );
}
