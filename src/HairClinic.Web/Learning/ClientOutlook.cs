using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>One client's units and next order as they stand at this moment, on the stored fits: what their pages show.</summary>
/// <param name="Case">Null for who has never worn a unit, or wears none any more.</param>
public sealed record ClientOutlook(ReorderFacts Book, ClientUnits Units, ClientReorderInput? Case, ReorderOutlook? Outlook)
{
    public static async Task<ClientOutlook> LoadAsync(
        ClinicDb db,
        Guid clientId,
        Guid salonId,
        LocalDate today,
        CancellationToken cancellation
    )
    {
        var book = await ReorderFacts.LoadAsync(db, cancellation);
        var units = (await ClientUnits.LoadAsync(db, book.Kinds, [(clientId, salonId, today)], cancellation))[0];
        var order = book.PrepareReorder(units);
        return new(book, units, order, order?.Outlook(new ReorderRule(LeadTimeForecasts.DaysInSight)));
    }

    public LocalDate Today => Units.Today;

    public LeadTimeForecasts Orders => Book.LeadTimesOn(Today);

    /// <summary>What the wear line draws to the right of today. An order that is not counted on has no day to be expected on.</summary>
    public WearLineForecast ToWearLineForecast() =>
        new(Case?.Left ?? new Dictionary<Guid, (LifePrediction, int)>(), Orders.ArrivalRanges(Units.InFlight), Outlook?.OrderBy, Gap())
        {
            Basis = Book.WearModels.LifeBasis,
        };

    /// <summary>From when the hair in house is worn out as likely as not until the next unit is as likely as not ready.</summary>
    private WearLineGap? Gap()
    {
        if (Case is not { } order || Outlook is not { AtRisk: true } outlook)
            return null;
        var from = outlook.HairEndDates?.Half ?? (outlook.InHand == 0 ? Today : null);
        var ready = NextReadyDay(order);
        return from is { } ends && ends < ready
            ? new WearLineGap(ends, ready, outlook.Standing.Verdict is ReorderVerdict.WithoutHair)
            : null;
    }

    /// <summary>When the first order in flight, or one placed today, is as likely as not ready to bond.</summary>
    public LocalDate NextReadyDay(ClientReorderInput order)
    {
        var prepared = Book.Preparation.HalfDays;
        return order.InFlight.Count > 0
            ? Orders.MedianArrival(Units.Units.Single(u => u.Id == order.InFlight[0])).PlusDays(prepared)
            : Today.PlusDays(Orders.UsualDays(order.UnitKindId).Half + prepared);
    }
}
