using HairClinic.Web.Language;
using HairClinic.Web.Shell;
using HairClinic.Web.Shell.Limits;
using HairClinic.Web.Ui;

namespace HairClinic.Web.Features.Outlook;

/// <summary>The page's tables as downloads, with days and numbers as programs write them.</summary>
public static class AheadEndpoint
{
    public static void MapAhead(this IEndpointRouteBuilder routes)
    {
        routes
            .MapGet("/ahead/workload.csv", WriteLoadAsync)
            .RequireAuthorization(Policies.Manage)
            .WithMetadata(new RateLimitedAttribute(LimitedAction.Export));
        routes
            .MapGet("/ahead/orders.csv", WriteOrdersAsync)
            .RequireAuthorization(Policies.Manage)
            .WithMetadata(new RateLimitedAttribute(LimitedAction.Export));
        routes
            .MapGet("/ahead/past-gaps.csv", WriteGapsAsync)
            .RequireAuthorization(Policies.Manage)
            .WithMetadata(new StepUpAttribute(), new RateLimitedAttribute(LimitedAction.Export));
    }

    private static async Task<IResult> WriteLoadAsync(Ahead slice, HttpContext context) =>
        FileResults.Sheet(
            context,
            "load-ahead.csv",
            [
                "salon",
                "week from",
                "rebonds",
                "wash-and-styles",
                "fittings",
                "chair hours",
                "chair hours low",
                "chair hours high",
                "chair hours open",
                "hands-on hours",
                "hands-on hours low",
                "hands-on hours high",
                "hands-on hours worked",
            ],
            from salon in await slice.WorkloadAsync(context.RequestAborted)
            from week in Enumerable.Range(0, salon.Load.Weeks)
            let load = salon.Load.Week(week)
            let chair = salon.Load.ChairBand(week)
            let hands = salon.Load.HandsOnBand(week)
            select (IReadOnlyList<string>)
                [
                    salon.SalonId is null ? "all salons" : salon.Name,
                    Dates.Iso(salon.WeekStartAtIndex(week))!,
                    Number(load.Rebonds),
                    Number(load.Washes),
                    Number(load.Fittings),
                    Number(load.ChairMinutes / 60),
                    Number(chair.From / 60),
                    Number(chair.To / 60),
                    Number(salon.ChairMinutes[week] / 60),
                    Number(load.HandsOnMinutes / 60),
                    Number(hands.From / 60),
                    Number(hands.To / 60),
                    Number(salon.HandsMinutes[week] / 60),
                ]
        );

    private static async Task<IResult> WriteOrdersAsync(Ahead slice, HttpContext context) =>
        FileResults.Sheet(
            context,
            "orders-ahead.csv",
            ["workshop", "month from", "orders", "orders low", "orders high"],
            from workshop in await slice.ExpectedOrdersAsync(context.RequestAborted)
            from month in Enumerable.Range(0, workshop.Load.Months)
            let band = workshop.Load.Band(month)
            select (IReadOnlyList<string>)
                [
                    workshop.IsSum ? "all workshops" : workshop.Name ?? "",
                    Dates.Iso(workshop.From.PlusMonths(month))!,
                    Number(workshop.Load.Month(month).Mean),
                    Number(band.From),
                    Number(band.To),
                ]
        );

    // Codes and no names: enough to find the card, and nothing to a stranger.
    private static async Task<IResult> WriteGapsAsync(Ahead slice, HttpContext context) =>
        FileResults.Sheet(
            context,
            "days-without-hair.csv",
            ["client code", "salon", "from", "through", "days", "cause"],
            (await slice.LoadGapsForExportAsync(context.RequestAborted)).Select(b =>
                (IReadOnlyList<string>)
                    [
                        b.Code,
                        b.Salon,
                        Dates.Iso(b.Gap.From)!,
                        Dates.Iso(b.Gap.Through)!,
                        b.Gap.Days.ToString(CultureInfo.InvariantCulture),
                        EnumWords.InEnglish(b.Gap.Cause),
                    ]
            )
        );

    private static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
