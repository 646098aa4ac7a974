using HairClinic.Web.Shell;

namespace HairClinic.Web.Features.Lasting;

/// <summary>The page's tables as downloads.</summary>
public static class WhatLastsEndpoint
{
    public static string Address(LastingQuestion question, LastingTable table) =>
        $"/what-lasts/table.csv?{question.Query}&table={LastingQuestion.Name(table)}";

    public static void MapWhatLasts(this IEndpointRouteBuilder routes) =>
        routes
            .MapGet(
                "/what-lasts/table.csv",
                async (string? of, string? by, string? table, WhatLasts slice, HttpContext context) =>
                {
                    if (LastingQuestion.Read(of, by) is not { } question || LastingCsv.Find(question, table) is not { } wanted)
                        return Results.NotFound();
                    var screen = await slice.OpenAsync(question, context.RequestAborted);
                    var name =
                        $"{LastingQuestion.Name(question.Of)}-by-{LastingQuestion.Name(question.By)}-{LastingQuestion.Name(wanted)}.csv";
                    return FileResults.Sheet(context, name, LastingCsv.Headings(wanted), LastingCsv.Rows(screen, wanted));
                }
            )
            .RequireAuthorization(Policies.Manage);
}
