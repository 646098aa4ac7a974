using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;
using HairClinic.Web.Ui.Wear;
using NodaTime.Text;

namespace HairClinic.Web.Features.Wear;

/// <summary>Whom to call: everyone whose bond has lifted, is past its window, in it or close before it, worst first.</summary>
public sealed class Due(ClinicDbFactory databases, CurrentActor current, IClock clock)
{
    public const int PageSize = 50;

    /// <summary>Four round trips, whatever the size of the book.</summary>
    public async Task<Screen> OpenAsync(Question question, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        // Held open, the connection is told once who is acting.
        await db.Database.OpenConnectionAsync(cancellation);
        var now = clock.GetCurrentInstant();
        var (salons, soonDays, gapAccepted, datesToCheck) = await SalonsAsync(db, current.Person, now, cancellation);
        var person = current.Person;
        var at = question.AllSalons ? null : person.AtSalon;
        var days = salons
            .Values.Where(s => person.Salons.Contains(s.Id) && (at is null || s.Id == at))
            .GroupBy(s => s.Today, (today, group) => DayOf(today, [.. group], soonDays))
            .ToList();
        var screen = new Screen(question, salons, at, person.Salons.Count > 1, soonDays, now)
        {
            GapAccepted = gapAccepted,
            DatesToCheck = datesToCheck,
        };
        if (days.Count == 0)
            return screen;
        if (question.Part is DuePart.AtRisk or DuePart.Spares)
            return await WithRisksAsync(db, screen, days, cancellation);
        var rows = await DueRows.ReadAsync(db, days, question.Part, question.After, PageSize + 1, cancellation);
        var page = rows.Take(PageSize).ToList();
        return screen with
        {
            Rows = page,
            Next = rows.Count > PageSize ? page[^1].Cursor : null,
            Counts = await DueCounts.ReadAsync(db, days, cancellation),
        };
    }

    private static async Task<Screen> WithRisksAsync(
        ClinicDb db,
        Screen screen,
        IReadOnlyList<SalonLocalDateGroup> days,
        CancellationToken cancellation
    )
    {
        var rows = await GapRiskRows.ReadAsync(
            db,
            [.. days.SelectMany(d => d.Salons)],
            screen.Asked.Part,
            screen.Asked.RisksAfter,
            PageSize + 1,
            cancellation
        );
        var page = rows.Take(PageSize).ToList();
        return screen with
        {
            Basis = (await WearModelPair.LoadAsync(db, cancellation)).LifeBasis,
            Risks = page,
            NextRisk = rows.Count > PageSize ? GapRiskCursor.AfterRow(page[^1]) : null,
            Counts = await DueCounts.ReadAsync(db, days, cancellation),
        };
    }

    private static SalonLocalDateGroup DayOf(LocalDate today, IReadOnlyList<SalonToday> salons, int soonDays) =>
        new(today, salons.Min(s => today.AtStartOfDayInZone(s.Zone).ToInstant()), today.PlusDays(soonDays), [.. salons.Select(s => s.Id)]);

    // All of the practice's: a visit may be booked in one this person does not work in, and its hour is that salon's.
    private static async Task<(Dictionary<Guid, SalonToday>, int SoonDays, double GapAccepted, int DatesToCheck)> SalonsAsync(
        ClinicDb db,
        PersonActor person,
        Instant now,
        CancellationToken cancellation
    )
    {
        var toCheck = OpenDateChecks.Query(db, person);
        var salons = await db
            .Salons.AsNoTracking()
            .Select(s => new
            {
                s.Id,
                s.Name,
                s.Zone,
                SoonDays = db.PracticeSettings.Select(p => p.OpeningSoonDays).First(),
                GapChance = db.PracticeSettings.Select(p => p.GapChancePercent).First(),
                ToCheck = toCheck.Count(),
            })
            .ToListAsync(cancellation);
        var days = salons.Select(s => SalonToday.AsOf(s.Id, s.Name, s.Zone, now)).ToDictionary(s => s.Id);
        return salons.Count == 0 ? (days, 0, 0, 0) : (days, salons[0].SoonDays, salons[0].GapChance / 100.0, salons[0].ToCheck);
    }

    /// <param name="AllSalons">All the salons of the person, not only the one they are at.</param>
    /// <param name="After">Where the page before ended.</param>
    public sealed record Question(DuePart Part, bool AllSalons, DueCursor? After)
    {
        /// <summary>Where the page before ended, among those at risk.</summary>
        public GapRiskCursor? RisksAfter { get; init; }
    }

    /// <param name="Salons">All the practice's, by id.</param>
    /// <param name="AtSalon">The one the list is of; null for all of the person's.</param>
    public sealed record Screen(
        Question Asked,
        IReadOnlyDictionary<Guid, SalonToday> Salons,
        Guid? AtSalon,
        bool ManySalons,
        int SoonDays,
        Instant Now
    )
    {
        /// <summary>The chance of a gap that the practice accepts.</summary>
        public double GapAccepted { get; init; }

        /// <summary>Dates that wait for somebody to say whether they are right.</summary>
        public int DatesToCheck { get; init; }

        public IReadOnlyList<DueRow> Rows { get; init; } = [];
        public DueCursor? Next { get; init; }

        /// <summary>Those at risk of a gap, or who lack a spare, where that part is asked for.</summary>
        public IReadOnlyList<ClientGapRisk> Risks { get; init; } = [];

        /// <summary>What the risks stand on, where the newest recalculation found no answer.</summary>
        public ModelBasis? Basis { get; init; }

        public GapRiskCursor? NextRisk { get; init; }
        public DueCounts Counts { get; init; } = new(new Dictionary<DuePart, int>(), AtLeast: false);
    }
}

/// <summary>The last row of a page, from which the next one goes on. It is written into the address bar.</summary>
/// <param name="Rank">0 among the lifted, 1 after them.</param>
public sealed record DueCursor(int Rank, LocalDate ClosesOn, Guid BondId)
{
    public override string ToString() => $"{Rank}_{LocalDatePattern.Iso.Format(ClosesOn)}_{BondId:N}";

    /// <returns>Null for anything that is not a cursor; the list then starts from its beginning.</returns>
    public static DueCursor? Parse(string? text) =>
        text?.Split('_') is [("0" or "1") and var rank, var day, var id]
        && LocalDatePattern.Iso.Parse(day).TryGetValue(default, out var closes)
        && Guid.TryParseExact(id, "N", out var bond)
            ? new(rank[0] - '0', closes, bond)
            : null;
}

/// <summary>Salons in which it is the same day. A practice across the date line has several such days at once.</summary>
/// <param name="Began">When that day began in the first of them.</param>
/// <param name="Soon">The last day a window may open on to be listed as opening soon.</param>
public sealed record SalonLocalDateGroup(LocalDate Today, Instant Began, LocalDate Soon, IReadOnlyList<Guid> Salons);

/// <summary>The last row of a page of those at risk; the next goes on with fewer expected days.</summary>
public sealed record GapRiskCursor(double Days, Guid ClientId)
{
    public override string ToString() => $"{Days.ToString("R", CultureInfo.InvariantCulture)}_{ClientId:N}";

    public static GapRiskCursor AfterRow(ClientGapRisk row) => new(row.Plan.ExpectedDaysWithoutHair, row.ClientId);

    /// <returns>Null for anything that is not such a cursor; the list then starts from its beginning.</returns>
    public static GapRiskCursor? Parse(string? text) =>
        text?.Split('_') is [var days, var id]
        && double.TryParse(days, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
        && double.IsFinite(number)
        && Guid.TryParseExact(id, "N", out var client)
            ? new(number, client)
            : null;
}
