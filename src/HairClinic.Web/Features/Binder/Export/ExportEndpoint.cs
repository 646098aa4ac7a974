using HairClinic.Domain.Practices;
using HairClinic.Web.Features.Binder.Sheets.Columns;
using HairClinic.Web.Shell;
using HairClinic.Web.Shell.Limits;

namespace HairClinic.Web.Features.Binder.Export;

/// <summary>The downloads of the export page.</summary>
public static class ExportEndpoint
{
    public const string ForPeople = "people";
    public const string ForProgram = "program";

    public static string Address(SheetKind kind, string audience) => $"/practice/binder/export/{kind.Name}?for={audience}";

    public static void MapExport(this IEndpointRouteBuilder routes) =>
        routes
            .MapGet(
                "/practice/binder/export/{kind}",
                async (
                    string kind,
                    [Microsoft.AspNetCore.Mvc.FromQuery(Name = "for")] string? audience,
                    Export slice,
                    HttpContext context
                ) =>
                {
                    if (SheetKind.Find(kind) is not { } sheet || audience is not (ForPeople or ForProgram))
                        return Results.NotFound();
                    byte[] file;
                    try
                    {
                        file = await slice.WriteAsync(sheet, audience == ForPeople, context.RequestAborted);
                    }
                    catch (Refusal refusal)
                    {
                        return Results.Text(refusal.Message, statusCode: StatusCodes.Status413PayloadTooLarge);
                    }
                    return Results.File(
                        file,
                        "text/csv; charset=utf-8",
                        audience == ForPeople ? $"{sheet.Name}-to-read.csv" : sheet.FileName
                    );
                }
            )
            .RequireAuthorization(Policies.Manage)
            .WithMetadata(new StepUpAttribute(), new LimitedAttribute(Limited.Export));
}
