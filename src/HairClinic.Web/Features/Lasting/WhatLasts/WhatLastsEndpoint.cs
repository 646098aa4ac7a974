using HairClinic.Web.Shell;

namespace HairClinic.Web.Features.Lasting;

/// <summary>The page's tables as downloads.</summary>
public static class WhatLastsEndpoint
{
    public static string Address(LastingQuery question, LastingTable table) =>
        $"/what-lasts/table.csv?{question.Query}&table={LastingQuery.ToQueryValue(table)}";

    public static void MapWhatLasts(this IEndpointRouteBuilder routes) =>
        routes
            .MapGet(
                "/what-lasts/table.csv",
                async (string? of, string? by, string? table, WhatLasts slice, HttpContext context) =>
                {
                    if (LastingQuery.Parse(of, by) is not { } question || LastingCsv.ParseTable(question, table) is not { } wanted)
                        return Results.NotFound();
                    var screen = await slice.OpenAsync(question, context.RequestAborted);
                    var name =
                        $"{LastingQuery.ToQueryValue(question.Of)}-by-{LastingQuery.ToQueryValue(question.By)}-{LastingQuery.ToQueryValue(wanted)}.csv";
                    return FileResults.Sheet(context, name, LastingCsv.Headings(wanted), LastingCsv.Rows(screen, wanted));
                }
            )
            .RequireAuthorization(Policies.Manage);
}
