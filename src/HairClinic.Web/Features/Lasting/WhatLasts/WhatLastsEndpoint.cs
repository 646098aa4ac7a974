using HairClinic.Web.Shell;

namespace HairClinic.Web.Features.Lasting;

/// <summary>The page's tables as downloads.</summary>
public static class WhatLastsEndpoint
{
    public static string Address(LastingQuery question, LastingTableKind table) =>
        $"/what-lasts/table.csv?{question.Query}&table={LastingQuery.EnumToQueryValue(table)}";

    public static void MapWhatLasts(this IEndpointRouteBuilder routes) =>
        routes
            .MapGet(
                "/what-lasts/table.csv",
                async (string? of, string? by, string? table, WhatLasts slice, HttpContext context) =>
                {
                    if (LastingQuery.Parse(of, by) is not { } question || LastingCsv.ParseTableName(question, table) is not { } wanted)
                        return Results.NotFound();
                    var screen = await slice.OpenAsync(question, context.RequestAborted);
                    var name =
                        $"{LastingQuery.EnumToQueryValue(question.Of)}-by-{LastingQuery.EnumToQueryValue(question.By)}-{LastingQuery.EnumToQueryValue(wanted)}.csv";
                    return FileResults.Sheet(context, name, LastingCsv.Headings(wanted), LastingCsv.Rows(screen, wanted));
                }
            )
            .RequireAuthorization(Policies.Manage);
}
