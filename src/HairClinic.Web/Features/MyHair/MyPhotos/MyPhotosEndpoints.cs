using HairClinic.Web.Data.Books;
using HairClinic.Web.Shell;

namespace HairClinic.Web.Features.MyHair;

/// <summary>The pictures of a client's own page. What is not theirs, or not shared, is not there.</summary>
public static class MyPhotosEndpoints
{
    public static void MapMyPhotos(this IEndpointRouteBuilder routes)
    {
        routes
            .MapGet(
                "/my-hair/my-photos/{photoId:guid}",
                (Guid photoId, MyPhotos slice, HttpContext context) => AnswerAsync(slice, photoId, part: null, context)
            )
            .RequireAuthorization(Policies.Client)
            .WithMetadata(new ConfirmedOnlyAttribute());
        routes
            .MapGet(
                "/my-hair/my-photos/{photoId:guid}/small",
                (Guid photoId, MyPhotos slice, HttpContext context) => AnswerAsync(slice, photoId, PhotoStore.Small, context)
            )
            .RequireAuthorization(Policies.Client)
            .WithMetadata(new ConfirmedOnlyAttribute());
    }

    private static async Task<IResult> AnswerAsync(MyPhotos slice, Guid photoId, string? part, HttpContext context) =>
        FileAnswers.Picture(context, await slice.ReadAsync(photoId, part, context.RequestAborted));
}
