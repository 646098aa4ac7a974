using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.MyHair;

/// <summary>A client sees their own units over time: the same wear line the staff read.</summary>
public sealed class MyUnits(ClinicDbFactory databases, PracticeJobRunner jobs, CurrentActor current, IClock clock)
{
    /// <returns>Null when the client is no longer there.</returns>
    public async Task<WearLineData?> OpenAsync(CancellationToken cancellation)
    {
        // A record folded into another has no page of its own: the fence shows the one kept, and no other.
        _ = current.Client;
        await using var db = databases.Open();
        var own = await db
            .Clients.AsNoTracking()
            .Select(c => new { c.Id, Salon = db.Salons.First(s => s.Id == c.HomeSalonId) })
            .SingleOrDefaultAsync(cancellation);
        if (own is null)
            return null;
        var today = own.Salon.DayOf(clock.GetCurrentInstant());
        return await WearLineBuilder.LoadAsync(
            db,
            own.Id,
            today,
            await LivesAsync(db, own.Id, own.Salon.Id, today, cancellation),
            cancellation
        );
    }

    // When the next one is ordered is the practice's affair; how long theirs will last is the client's to see.
    private async Task<WearLineForecast> LivesAsync(ClinicDb db, Guid id, Guid salonId, LocalDate today, CancellationToken cancellation)
    {
        var models = await WearModelPair.LoadAsync(db, cancellation);
        var kinds = await LifeSpellBuilder.UnitKindsAsync(db, cancellation);
        var units = (await ClientUnits.LoadAsync(db, kinds, [(id, salonId, today)], cancellation))[0];
        return WearLineForecast.Unknown with
        {
            Left = units.LivesLeft(models.Life, kinds),
            Basis = models.LifeBasis,
            Arrivals = units.InFlight.Any() ? await ArrivalsAsync(id, salonId, today, cancellation) : WearLineForecast.Unknown.Arrivals,
        };
    }

    // How long workshops take and what staff are asked about an order are not a client's to read; when their own unit will be here is,
    // and it is the day the staff see.
    private async Task<IReadOnlyDictionary<Guid, (LocalDate, LocalDate)>> ArrivalsAsync(
        Guid id,
        Guid salonId,
        LocalDate today,
        CancellationToken cancellation
    ) =>
        await jobs.RunJobAsync(
            current.Client.PracticeId,
            "my units",
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                var book = await ReorderFacts.LoadAsync(db, cancellation);
                var units = (await ClientUnits.LoadAsync(db, book.Kinds, [(id, salonId, today)], cancellation))[0];
                return book.LeadTimesOn(today).ArrivalRanges(units.InFlight);
            }
        );
}
