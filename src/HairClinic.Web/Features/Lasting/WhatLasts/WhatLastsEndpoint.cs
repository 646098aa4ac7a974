using HairClinic.Web.Shell;

namespace HairClinic.Web.Features.Lasting;

/// <summary>The page's tables as downloads.</summary>
public static class WhatLastsEndpoint
{
    public static string Address(LastingQuery question, LastingTable table) =>
        $"/what-lasts/table.csv?{question.Query}&table={LastingQuery.Name(table)}";

    public static void MapWhatLasts(this IEndpointRouteBuilder routes) =>
        routes
            .MapGet(
                "/what-lasts/table.csv",
                async (string? of, string? by, string? table, WhatLasts slice, HttpContext context) =>
                {
                    if (LastingQuery.Read(of, by) is not { } question || LastingCsv.Find(question, table) is not { } wanted)
                        return Results.NotFound();
                    var screen = await slice.OpenAsync(question, context.RequestAborted);
                    var name = $"{LastingQuery.Name(question.Of)}-by-{LastingQuery.Name(question.By)}-{LastingQuery.Name(wanted)}.csv";
                    return FileResults.Sheet(context, name, LastingCsv.Headings(wanted), LastingCsv.Rows(screen, wanted));
                }
            )
            .RequireAuthorization(Policies.Manage);
}
