using HairClinic.Web.Data.Books;
using HairClinic.Web.Shell;

namespace HairClinic.Web.Features.Clients;

/// <summary>The pictures of the photo page. Whoever may not see one is told that there is none.</summary>
public static class PhotoEndpoints
{
    public static void MapPhotos(this IEndpointRouteBuilder routes)
    {
        routes
            .MapGet(
                "/clients/{clientId:guid}/photos/{photoId:guid}",
                (Guid clientId, Guid photoId, Photos slice, HttpContext context) =>
                    AnswerAsync(slice, clientId, photoId, part: null, context)
            )
            .RequireAuthorization(Policies.Photos);
        routes
            .MapGet(
                "/clients/{clientId:guid}/photos/{photoId:guid}/small",
                (Guid clientId, Guid photoId, Photos slice, HttpContext context) =>
                    AnswerAsync(slice, clientId, photoId, PhotoStore.Small, context)
            )
            .RequireAuthorization(Policies.Photos);
    }

    private static async Task<IResult> AnswerAsync(Photos slice, Guid clientId, Guid photoId, string? part, HttpContext context) =>
        FileResults.Picture(context, await slice.ReadPictureAsync(clientId, photoId, part, context.RequestAborted));
}
