using HairClinic.Web.Language;
using HairClinic.Web.Shell;
using HairClinic.Web.Shell.Limits;
using HairClinic.Web.Ui;
using HairClinic.Web.Ui.Fields;

namespace HairClinic.Web.Features.Units;

/// <summary>The list as a download: codes and no names, days as programs write them.</summary>
public static class OrdersEndpoint
{
    public static void MapOrders(this IEndpointRouteBuilder routes) =>
        routes
            .MapGet("/orders/orders.csv", WriteAsync)
            .RequireAuthorization(Policies.Manage)
            .WithMetadata(new StepUpAttribute(), new RateLimitedAttribute(LimitedAction.Export));

    private static async Task<IResult> WriteAsync(Orders slice, HttpContext context, string? part, Guid? workshop, Guid? salon) =>
        FileResults.Sheet(
            context,
            "orders.csv",
            [
                "unit",
                "client code",
                "kind",
                "workshop",
                "order",
                "state",
                "ordered on",
                "promised first",
                "promised last",
                "likely from",
                "likely to",
                "days late",
                "claim until",
                "open questions",
                "price",
                "currency",
            ],
            (
                await slice.RowsForExportAsync(
                    new OrdersQuestion(OrdersQuestion.ParsePart(part), workshop, salon, 1),
                    context.RequestAborted
                )
            ).Select(Cells)
        );

    private static IReadOnlyList<string> Cells(Orders.Row row) =>
        [
            row.Serial,
            row.Client?.Code ?? "",
            row.Kind,
            row.Workshop ?? "",
            row.OrderNumber ?? "",
            EnumWords.InEnglish(row.State),
            Dates.Iso(row.OrderedOn) ?? "",
            Dates.Iso(row.FirstPromise) ?? "",
            Dates.Iso(row.Promise) ?? "",
            Dates.Iso(row.Likely?.Early) ?? "",
            Dates.Iso(row.Likely?.Late) ?? "",
            row.DaysLate?.ToString(CultureInfo.InvariantCulture) ?? "",
            Dates.Iso(row.ClaimUntil) ?? "",
            row.OpenQuestions.ToString(CultureInfo.InvariantCulture),
            row is { PriceMinor: { } price, Currency: { } currency }
                ? MinorUnits.Write(price, Domain.Money.CurrencyDigits.For(currency), CultureInfo.InvariantCulture)!
                : "",
            row.PriceMinor is null ? "" : row.Currency ?? "",
        ];
}
