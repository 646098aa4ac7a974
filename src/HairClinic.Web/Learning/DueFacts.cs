using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>
/// What the due rule needs to know of the practice, read once: settings, salons with their opening days, hold
/// windows, and what was learnt. Whoever logs, imports or refreshes bonds asks it for the basis of one bond.
/// </summary>
public sealed class DueFacts
{
    private readonly PracticeSettings _settings;
    private readonly List<HoldWindowRule> _rules;
    private readonly Dictionary<Guid, Salon> _salons;
    private readonly Dictionary<Guid, OpeningDays> _opening;
    private readonly WearModel _model;

    private DueFacts(PracticeSettings settings, List<Salon> salons, List<HoldWindowRule> rules, WearModel model)
    {
        _settings = settings;
        _rules = rules;
        _salons = salons.ToDictionary(s => s.Id);
        _opening = salons.ToDictionary(s => s.Id, DueCalculator.OpeningDaysOf);
        _model = model;
    }

    public PracticeSettings Settings => _settings;

    /// <summary>What due days stand on, where the newest recalculation found no answer.</summary>
    public ModelBasis? Basis { get; private init; }

    /// <summary>The bonds that an alarm of the watch named.</summary>
    public IReadOnlyCollection<WatchedCohort> HoldCohorts { get; private init; } = [];

    public Salon SalonOf(Client client) => _salons[client.HomeSalonId];

    public Salon Salon(Guid salonId) => _salons[salonId];

    /// <summary>The practice's hold windows.</summary>
    public IReadOnlyCollection<HoldWindowRule> Windows => _rules;

    /// <summary>Four round trips, however many bonds are asked about.</summary>
    public static async Task<DueFacts> LoadAsync(ClinicDb db, CancellationToken cancellation)
    {
        var (settings, models, _) = await WearModelPair.LoadWithSettingsAsync(db, cancellation);
        return new(
            settings,
            await db.Salons.AsNoTracking().Include(s => s.Hours).Include(s => s.Closures).ToListAsync(cancellation),
            await db.HoldWindowRules.AsNoTracking().ToListAsync(cancellation),
            models.Hold
        )
        {
            Basis = models.HoldBasis,
            HoldCohorts = models.HoldCohorts,
        };
    }

    /// <param name="client">With their life events loaded.</param>
    /// <param name="holds">The client's bonds before this one; null leaves the target to what is assumed of anybody.</param>
    /// <param name="lotId">Of the adhesive, where it is known.</param>
    /// <param name="off">The bond that comes off when this one is made, and how long it held: that counts for this one.</param>
    /// <exception cref="Refusal">No hold window fits.</exception>
    public DueCalculator CalculatorFor(
        Client client,
        Guid baseMaterialId,
        Guid? adhesiveId,
        Attachment attachment,
        int? labelCureHours = null,
        bool? waitsKept = null,
        HoldFacts? holds = null,
        Guid? lotId = null,
        (Guid BondId, HoldObservation Held)? off = null
    )
    {
        var rule = HoldWindowRule.Choose(_rules, baseMaterialId, adhesiveId, attachment);
        var opening = _opening[client.HomeSalonId];
        if (holds is null || HoldFacts.PriorOf(rule) is not { } window)
            return new(opening, _settings, rule, client) { LabelCureHours = labelCureHours };

        (LocalDate Day, PopulationParameters Population, ClientEffectNodes Client, double Effect)? read = null;
        return new(opening, _settings, rule, client)
        {
            LabelCureHours = labelCureHours,
            Learnt = day =>
            {
                var (_, population, own, effect) = Read(day);
                return RebondTarget.FromModel(population, own, window, effect, _model.Fit is not null);
            },
            Survival = day =>
            {
                var (_, population, own, effect) = Read(day);
                var hold = new LifePrediction(population, own, window.Place, effect);
                return days => hold.Survival(days);
            },
        };

        // Target and survival come from the same reading of the records.
        (LocalDate, PopulationParameters, ClientEffectNodes, double) Read(LocalDate day)
        {
            if (read is { } known && known.Day == day)
                return known;
            var columns = holds.CovariatesOf(client.Id, day, baseMaterialId, adhesiveId, waitsKept, lotId);
            var population = _model.PopulationFor(window, columns);
            var own = _model.ClientEffect(population, holds.SpellsUntil(client.Id, day, off));
            read = (day, population, own, _model.Effects(columns));
            return read.Value;
        }
    }
}
