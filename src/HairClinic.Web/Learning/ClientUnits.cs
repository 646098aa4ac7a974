using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>One client's units with what they were worn and how they looked, as of a day.</summary>
public sealed class ClientUnits
{
    private readonly LifeFacts _book;
    private readonly Dictionary<Guid, LifeSpell> _lives;

    private ClientUnits(Guid clientId, Guid salonId, LocalDate today, LifeFacts book, IReadOnlyDictionary<Guid, UnitKindTerms> kinds)
    {
        (ClientId, SalonId, Today, _book) = (clientId, salonId, today, book);
        Units = [.. book.UnitsOf(clientId)];
        Borrowed = [.. book.BorrowedBy(clientId)];
        Lives = [.. book.Spells(clientId, kinds, today)];
        _lives = Lives.ToDictionary(l => l.UnitId);
    }

    public Guid ClientId { get; }

    public Guid SalonId { get; }

    public LocalDate Today { get; }

    /// <summary>Of every state; the oldest order first.</summary>
    public IReadOnlyList<HairSystem> Units { get; }

    /// <summary>Units of nobody's that they have now.</summary>
    public IReadOnlyList<BorrowedUnit> Borrowed { get; }

    /// <summary>Something is on the head, their own or lent.</summary>
    public bool OnHead => Units.Concat(Borrowed.Select(b => b.Unit)).Any(u => u.State == UnitState.Bonded);

    /// <summary>Those that were ever worn.</summary>
    public IReadOnlyList<LifeSpell> Lives { get; }

    /// <summary>The unit a repeat order copies.</summary>
    public HairSystem? ToRepeat => RepeatOrderRule.UnitToRepeat(Units);

    /// <summary>In house and still wearing: the hair there is. What has arrived counts, though it has to be looked at first.</summary>
    public IEnumerable<HairSystem> InHand => Units.Where(u => u.State.IsOnHeadOrInHouse() && !IsWornOut(u.Id));

    /// <summary>On order, and counted on.</summary>
    public IEnumerable<HairSystem> InFlight => Units.Where(u => u.State.IsInFlight() && !_book.MayBeForgotten(u));

    /// <summary>On order for so long that somebody has to say whether they are still on their way; not counted on until then.</summary>
    public IEnumerable<HairSystem> MayBeForgotten => Units.Where(_book.MayBeForgotten);

    /// <summary>Kept for, or fit only for, an emergency.</summary>
    public IEnumerable<HairSystem> Emergency =>
        Units.Where(u => u.State == UnitState.EmergencySpare || u.State.IsOnHeadOrInHouse() && IsWornOut(u.Id));

    /// <param name="clients">Whose, with their home salon and its day.</param>
    public static async Task<List<ClientUnits>> LoadAsync(
        ClinicDb db,
        IReadOnlyDictionary<Guid, UnitKindTerms> kinds,
        IReadOnlyCollection<(Guid Id, Guid SalonId, LocalDate Today)> clients,
        CancellationToken cancellation
    )
    {
        var book = await LifeFacts.LoadAsync(db, [.. clients.Select(c => c.Id)], cancellation);
        return [.. clients.Select(c => new ClientUnits(c.Id, c.SalonId, c.Today, book, kinds))];
    }

    /// <param name="book">As of that day, or of the evening before.</param>
    public static ClientUnits AsOf(
        LifeFacts book,
        IReadOnlyDictionary<Guid, UnitKindTerms> kinds,
        Guid clientId,
        Guid salonId,
        LocalDate day
    ) => new(clientId, salonId, day, book, kinds);

    public int WornDays(Guid unitId) => WornPeriod.DaysWornBefore(_book.WornPeriodsOf(unitId), Today);

    /// <summary>An inspection found it so: from then on it is worn in an emergency only.</summary>
    public bool IsWornOut(Guid unitId) => _lives.TryGetValue(unitId, out var life) && life.WornOut;

    /// <summary>Worn days at the unit's first repair; null where it was never repaired.</summary>
    public double? RepairedAt(Guid unitId) => _lives.GetValueOrDefault(unitId)?.RepairedAt;

    /// <param name="unit">Null for one that is still to be made.</param>
    public IReadOnlyList<CovariateValue> CovariatesOf(HairSystem? unit, UnitKindTerms kind) =>
        _book.CovariatesNow(unit, kind, ClientId, Today);

    /// <summary>It is among the units that an alarm of the watch named: the first of their deliveries; null where it is not.</summary>
    public LocalDate? WeakerSince(HairSystem unit, UnitKindTerms kind) => _book.CohortOf(unit, kind)?.From;

    /// <summary>The last day on which something was on the head; null for who never wore anything. What is lent unglued is worn, too.</summary>
    public LocalDate? LastWornOn => Borrowed.Any(b => b.Unit.State == UnitState.Lent) ? Today : LastBondedOn;

    private LocalDate? LastBondedOn =>
        Units.Concat(Borrowed.Select(b => b.Unit)).SelectMany(u => _book.WornPeriodsOf(u.Id)).Max(s => (LocalDate?)(s.To ?? Today));

    /// <summary>By unit in hand: how long it lasts, and what it was worn already.</summary>
    /// <remarks>A unit's own age is what the prediction is asked with, so the model of the client leaves it out there.</remarks>
    public Dictionary<Guid, (LifePrediction Life, int WornDays)> LivesLeft(
        WearModel model,
        IReadOnlyDictionary<Guid, UnitKindTerms> kinds
    ) => InHand.ToDictionary(u => u.Id, u => (LifeOf(u, model, kinds[u.UnitKindId]), WornDays(u.Id)));

    private LifePrediction LifeOf(HairSystem unit, WearModel model, UnitKindTerms kind)
    {
        var byAge = model.PredictUnit([.. Lives.Where(l => l.UnitId != unit.Id)], kind, CovariatesOf(unit, kind), RepairedAt(unit.Id));
        var worn = WornDays(unit.Id);
        return model.GradesOf(_lives.GetValueOrDefault(unit.Id), worn) is { } grades ? byAge.WithGrades(worn, grades) : byAge;
    }
}
