using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>Adds clients, batch by batch, to what is expected of salons and workshops.</summary>
public sealed class WorkloadForecaster(ReorderFacts book, DueFacts dues, VisitTypeMinutes minutes, Instant now)
{
    public const int Weeks = 52;
    public const int Months = 12;
    private const int Days = 7 * Weeks;

    private readonly ClientLoadCalculator _adder = new(Weeks);
    private readonly Dictionary<Guid, (SalonLoad Load, int Clients)> _salons = [];
    private readonly Dictionary<Guid, OrderLoad> _workshops = [];

    /// <summary>What the practice's services take, by what they are for; the first of a purpose that is still offered.</summary>
    public static async Task<VisitTypeMinutes> LoadVisitMinutesAsync(ClinicDb db, CancellationToken cancellation)
    {
        var services = await db
            .ServiceKinds.AsNoTracking()
            .Include(s => s.Steps)
            .Where(s => !s.Retired)
            .OrderBy(s => s.Id)
            .ToListAsync(cancellation);
        MinutesPerVisit Of(ServicePurpose purpose) =>
            services.Find(s => s.Purpose == purpose) is { } service
                ? new(service.Minutes, service.Steps.Where(s => s.Kind == Domain.Chairs.SegmentKind.HandsOn).Sum(s => s.Minutes))
                : default;
        return new(Of(ServicePurpose.Rebond), Of(ServicePurpose.WashAndStyle), Of(ServicePurpose.FirstFitting));
    }

    public async Task AddClientsAsync(
        ClinicDb db,
        IReadOnlyCollection<Guid> clientIds,
        IReadOnlyDictionary<Guid, (ClientReorderInput Case, ReorderOutlook Outlook)> orders,
        CancellationToken cancellation
    )
    {
        var clients = await db.Clients.AsNoTracking().Include(c => c.Events).Where(c => clientIds.Contains(c.Id)).ToListAsync(cancellation);
        var holds = await HoldFacts.LoadAsync(db, dues.Windows, clientIds, cancellation, dues.HoldCohorts);
        var visits = (
            await (
                from visit in db.Visits
                where clientIds.Contains(visit.ClientId)
                join kind in db.ServiceKinds on visit.ServiceKindId equals kind.Id
                where
                    kind.Purpose == ServicePurpose.WashAndStyle && visit.State == VisitState.Done
                    || kind.Purpose == ServicePurpose.FirstFitting && visit.State == VisitState.Booked
                select new
                {
                    visit.ClientId,
                    visit.Day,
                    kind.Purpose,
                }
            ).ToListAsync(cancellation)
        ).ToLookup(v => v.ClientId);
        foreach (var client in clients)
        {
            var today = book.Salons[client.HomeSalonId].DayOf(now);
            var wash = visits[client.Id].Where(v => v.Purpose == ServicePurpose.WashAndStyle).Select(v => (LocalDate?)v.Day).Max();
            var fitting = visits[client.Id]
                .Where(v => v.Purpose == ServicePurpose.FirstFitting && v.Day >= today)
                .Select(v => (LocalDate?)v.Day)
                .Min();
            AddVisits(client, holds, today, wash, fitting);
            if (orders.TryGetValue(client.Id, out var order))
                AddOrders(order.Case, order.Outlook);
        }
    }

    /// <summary>Puts the sums into the stored forecasts, one a salon and one a workshop. Saves nothing.</summary>
    public async Task StageRowsAsync(ClinicDb db, CancellationToken cancellation)
    {
        var loads = await db.LoadForecasts.ToDictionaryAsync(f => f.SalonId, cancellation);
        foreach (var salon in book.Salons.Values)
        {
            if (!loads.Remove(salon.Id, out var forecast))
                db.LoadForecasts.Add(forecast = new LoadForecast(Guid.CreateVersion7(), salon.Id));
            var (load, clients) = _salons.GetValueOrDefault(salon.Id, (new SalonLoad(Weeks), 0));
            forecast.Store(salon.DayOf(now), clients, load);
        }
        var orders = await db.OrderForecasts.ToListAsync(cancellation);
        db.OrderForecasts.RemoveRange(orders.Where(o => !_workshops.ContainsKey(o.WorkshopId ?? Guid.Empty)));
        foreach (var (workshopId, load) in _workshops)
        {
            var id = workshopId == Guid.Empty ? (Guid?)null : workshopId;
            if (orders.Find(o => o.WorkshopId == id) is not { } forecast)
                db.OrderForecasts.Add(forecast = new OrderForecast(Guid.CreateVersion7(), id));
            forecast.SetLoad(book.Salons.Values.Select(s => s.DayOf(now)).Min().With(DateAdjusters.StartOfMonth), load);
        }
    }

    private void AddVisits(Client client, HoldFacts holds, LocalDate today, LocalDate? lastWash, LocalDate? fitting)
    {
        // Whoever wears nothing comes when they are fitted; until then there is nothing to expect of them.
        if (holds.LastBond(client.Id) is not { Bond.RemovedOn: null } made || QuestionOf(client, made, holds, today) is not { } question)
        {
            if (fitting is { } day)
                AddFitting(client, Period.DaysBetween(today, day));
            return;
        }
        var days = fitting is { } planned ? Period.DaysBetween(today, planned) : (int?)null;
        var load = Count(client);
        _adder.AddTo(
            load,
            question with
            {
                WashEveryDays = client.WashEveryDays,
                NextWashInDays = NextWash(client, lastWash, made.Bond, today),
                FittingInDays = days,
            },
            minutes
        );
    }

    private void AddFitting(Client client, int inDays)
    {
        var load = Count(client);
        var week = WeekLoad.FromCounts(default, default, CountMoments.Bernoulli(1), minutes);
        if (inDays / 7 >= Weeks)
            return;
        for (var scenario = 0; scenario < PracticeEffectNode.Three.Count; scenario++)
            load.Add(scenario, inDays / 7, week);
    }

    private SalonLoad Count(Client client)
    {
        var (load, count) = _salons.GetValueOrDefault(client.HomeSalonId, (new SalonLoad(Weeks), 0));
        _salons[client.HomeSalonId] = (load, count + 1);
        return load;
    }

    private ClientLoadInput? QuestionOf(Client client, BondWithMaterials made, HoldFacts holds, LocalDate today)
    {
        var (bond, baseId, adhesiveId, _) = made;
        var columns = holds.CovariatesOf(client.Id, bond.AppliedOn, baseId, adhesiveId, bond.WaitsKept);
        var next = LocalDate.Max(bond.DueOn, today);
        DueCalculator basis;
        try
        {
            basis = dues.CalculatorFor(client, baseId, adhesiveId, bond.Attachment, waitsKept: null, holds: holds);
        }
        catch (Domain.Practices.Refusal)
        {
            return null;
        }
        var own = holds.SpellsUntil(client.Id, bond.AppliedOn);
        var window = HoldFacts.NonDegeneratePriorOf(basis.Window);
        var model = book.WearModels.Hold;
        return new ClientLoadInput(
            scenario =>
            {
                var population = Shifted(model.PopulationFor(window, columns), scenario);
                return new LifePrediction(population, model.ClientEffect(population, own).Reduced(), window.Place, model.Effects(columns));
            },
            Math.Clamp(Period.DaysBetween(next, basis.WindowFor(next).DueOn), 1, Days - 1)
        )
        {
            BondAgeDays = Math.Max(0, Period.DaysBetween(bond.AppliedOn, today)),
            CurrentTargetDays = Math.Clamp(Period.DaysBetween(bond.AppliedOn, bond.DueOn), 1, Days - 1),
        };
    }

    private void AddOrders(ClientReorderInput order, ReorderOutlook outlook)
    {
        var workshop = book.Kinds[order.UnitKindId].WorkshopId ?? Guid.Empty;
        if (!_workshops.TryGetValue(workshop, out var load))
            _workshops[workshop] = load = new OrderLoad(Months);
        var model = book.WearModels.Life;
        var life = new double[Days + 1];
        for (var scenario = 0; scenario < PracticeEffectNode.Three.Count; scenario++)
        {
            var kind = book.Kinds[order.UnitKindId];
            var window = kind.LifePrior();
            var population = Shifted(model.PopulationFor(window, order.ColumnsOfNew), PracticeEffectNode.Three[scenario]);
            var nodes = model.ClientEffect(population, order.Lives).Reduced();
            var prediction = model.ShapeOf(population, kind.Id, kind.LifePrior(), wasRepaired: false) is { } shape
                ? new LifePrediction(population, nodes, window.Place, order.EffectOfNew, shape, default)
                : new LifePrediction(population, nodes, window.Place, order.EffectOfNew);
            var before = 1.0;
            for (var day = 1; day < life.Length; day++)
            {
                var after = prediction.Survival(day + 0.5);
                (life[day], before) = (before - after, after);
            }
            OrderLoadCalculator.AddTo(load, scenario, order.Today, outlook.Answer.ReorderInDays ?? 0, life, Days);
        }
    }

    // What all clients share is held at the scenario's value, so it spreads no more.
    private static PopulationParameters Shifted(PopulationParameters population, PracticeEffectNode scenario) =>
        population with
        {
            PracticeMean = population.PracticeMean + scenario.Shift * Math.Sqrt(population.PracticeVariance),
            PracticeVariance = 0,
        };

    private static int NextWash(Client client, LocalDate? last, Bond bond, LocalDate today)
    {
        if (client.WashEveryDays is not { } every)
            return 0;
        var from = last > bond.AppliedOn ? last.Value : bond.AppliedOn;
        return Math.Max(0, Period.DaysBetween(today, from.PlusDays(every)));
    }
}
