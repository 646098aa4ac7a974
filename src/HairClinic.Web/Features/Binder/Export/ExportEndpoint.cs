using System.IO.Compression;
using HairClinic.Web.Features.Binder.Sheets;
using HairClinic.Web.Shell;
using HairClinic.Web.Shell.Limits;

namespace HairClinic.Web.Features.Binder;

/// <summary>The downloads of the export page: one sheet, or all four in one file.</summary>
public static class ExportEndpoint
{
    public const string ForPeople = "people";
    public const string ForProgram = "program";
    private const string All = "all";

    public static string Address(SheetKind? kind, string audience) => $"/practice/binder/export/{kind?.Name ?? All}?for={audience}";

    public static void MapExport(this IEndpointRouteBuilder routes) =>
        routes
            .MapGet(
                "/practice/binder/export/{kind}",
                (string kind, [Microsoft.AspNetCore.Mvc.FromQuery(Name = "for")] string? audience, Export slice, HttpContext context) =>
                {
                    if (audience is not (ForPeople or ForProgram))
                        return Results.NotFound();
                    var people = audience == ForPeople;
                    var cancellation = context.RequestAborted;
                    if (kind == All)
                        return Results.Stream(
                            body => ZipAsync(slice, people, body, cancellation),
                            "application/zip",
                            people ? "binder-to-read.zip" : "binder.zip"
                        );
                    return SheetKind.Find(kind) is { } sheet
                        ? Results.Stream(
                            body => slice.WriteSheetsAsync([sheet], people, (_, write) => write(body), cancellation),
                            "text/csv; charset=utf-8",
                            NameOf(sheet, people)
                        )
                        : Results.NotFound();
                }
            )
            .RequireAuthorization(Policies.Manage)
            .WithMetadata(new StepUpAttribute(), new RateLimitedAttribute(LimitedAction.Export));

    private static string NameOf(SheetKind sheet, bool forPeople) => forPeople ? $"{sheet.Name}-to-read.csv" : sheet.FileName;

    private static async Task ZipAsync(Export slice, bool forPeople, Stream body, CancellationToken cancellation)
    {
        await using var zip = await ZipArchive.CreateAsync(body, ZipArchiveMode.Create, leaveOpen: true, null, cancellation);
        await slice.WriteSheetsAsync(
            SheetKind.All,
            forPeople,
            async (kind, write) =>
            {
                await using var entry = await zip.CreateEntry(NameOf(kind, forPeople)).OpenAsync(cancellation);
                await write(entry);
            },
            cancellation
        );
    }
}
