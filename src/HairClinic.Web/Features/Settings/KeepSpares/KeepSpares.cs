using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Learning;
using HairClinic.Web.Shell.Edits;

namespace HairClinic.Web.Features.Settings;

/// <summary>How many spares are always kept ready, kind by kind, beside what that costs and what it buys by the practice's own records.</summary>
public sealed class KeepSpares(ClinicDbFactory databases, WriteOnce writes, IClock clock)
{
    /// <summary>The chances of a gap that the picture goes through, in percent.</summary>
    private static readonly int[] Chances = [20, 10, 5, 2, 1];

    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var kinds = await db.UnitKinds.AsNoTracking().Where(k => !k.Retired).OrderBy(k => k.Name).ToListAsync(cancellation);
        var book = await ReorderFacts.LoadAsync(db, cancellation);
        var (clients, prices) = await PracticeWideAsync(cancellation);
        var now = clock.GetCurrentInstant();
        var today = book.Salons.Values.Select(s => s.DayOf(now)).DefaultIfEmpty(now.InUtc().Date).Min();
        var orders = book.LeadTimesOn(today);
        var accepted = book.Settings.GapChancePercent;
        var rows = kinds
            .Select(k => new KindRow(
                k.Id,
                k.Name,
                k.Spares,
                clients.GetValueOrDefault(k.Id),
                CostsOf(book.CertaintyCostOf(k.Id, today), accepted)
            )
            {
                Price = prices.GetValueOrDefault(k.Id),
                Orders = orders.OrdersBehind(k.Id),
            })
            .OrderBy(r => r.Clients == 0)
            .ToList();
        return new Screen(
            new Input
            {
                Lines =
                [
                    .. rows.Select(r => new Line
                    {
                        UnitKindId = r.Id,
                        Spares = r.Spares,
                        Version = kinds.Find(k => k.Id == r.Id)!.Version,
                    }),
                ],
            },
            rows,
            accepted,
            book.WearModels.Life.Fit?.DataCut
        );
    }

    /// <returns>For how many kinds another rule holds now.</returns>
    /// <exception cref="Refusal">More spares than are ever kept, or somebody took a kind out.</exception>
    /// <exception cref="OvertakenException">Someone else changed one of these kinds since the form opened.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(key, nameof(KeepSpares), input, db => WriteAsync(db, input, cancellation), cancellation);

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        var kinds = await db.UnitKinds.ToDictionaryAsync(k => k.Id, cancellation);
        var changed = 0;
        foreach (var line in input.Lines)
        {
            if (!kinds.TryGetValue(line.UnitKindId, out var kind))
                throw new Refusal("Someone else took this out meanwhile, so it cannot be changed any more.");
            if (kind.Spares == line.Spares)
                continue;
            WriteOnce.ExpectVersion(db, kind, line.Version);
            kind.KeepSpares(line.Spares);
            changed++;
        }
        if (changed > 0)
            db.WorkItems.Add(WorkItemFactory.Recalculate(clock.GetCurrentInstant()));
        return new Outcome(changed);
    }

    // The rule holds for all salons, so it is counted over all of them: numbers only, whoever looks.
    private async Task<(Dictionary<Guid, int> Clients, Dictionary<Guid, UnitPrice> Prices)> PracticeWideAsync(
        CancellationToken cancellation
    )
    {
        await using var db = databases.OpenPracticeWide(nameof(KeepSpares));
        var clients = await db
            .ReorderPlans.Where(p => ReorderPlanStore.ClientsToPlan(db).Any(c => c.Id == p.ClientId))
            .GroupBy(p => p.UnitKindId)
            .Select(g => new { Kind = g.Key, Count = g.Count() })
            .ToDictionaryAsync(g => g.Kind, g => g.Count, cancellation);
        var prices = await db
            .HairSystems.Where(u => u.PriceMinor != null && u.Currency != null)
            .GroupBy(u => new { u.UnitKindId, u.Currency })
            .Select(g => new
            {
                g.Key.UnitKindId,
                Price = new UnitPrice(g.Key.Currency!, g.Count(), g.Average(u => (double)u.PriceMinor!.Value)),
            })
            .ToListAsync(cancellation);
        // Amounts of two currencies never meet: the one most of them were paid in speaks for the kind.
        return (
            clients,
            prices
                .GroupBy(p => p.UnitKindId, p => p.Price)
                .ToDictionary(g => g.Key, g => g.OrderByDescending(p => p.Units).ThenBy(p => p.Currency, StringComparer.Ordinal).First())
        );
    }

    private static KindCosts CostsOf(CertaintyCost costs, int accepted)
    {
        var curve = Chances
            .Append(accepted)
            .Distinct()
            .OrderDescending()
            .ToDictionary(percent => percent, percent => costs.WithChance(percent / 100.0));
        return new(
            [.. curve.Values],
            curve[accepted],
            [.. Enumerable.Range(1, UnitKind.MostSpares).Select(spares => costs.WithSpares(spares, accepted / 100.0))],
            costs.Proposed
        );
    }

    /// <param name="Kinds">Those that are ordered, the ones that somebody wears first.</param>
    /// <param name="AcceptedPercent">The chance of a gap that the practice accepts.</param>
    /// <param name="LivesUpTo">The last day whose records lives were learnt from; null where the practice's rows stand alone.</param>
    public sealed record Screen(Input Input, IReadOnlyList<KindRow> Kinds, int AcceptedPercent, LocalDate? LivesUpTo);

    /// <param name="Spares">The rule as it is saved.</param>
    /// <param name="Clients">Whose next unit is of this kind, in all salons.</param>
    /// <param name="Costs">For one client.</param>
    public sealed record KindRow(Guid Id, string Name, int Spares, int Clients, KindCosts Costs)
    {
        /// <summary>Null where no unit of the kind has a price.</summary>
        public UnitPrice? Price { get; init; }

        /// <summary>Of all who wear it; of one client where nobody does.</summary>
        public double Together(double each) => Math.Max(1, Clients) * each;

        /// <summary>Orders that arrived and that its lead time was learnt from.</summary>
        public int Orders { get; init; }
    }

    /// <param name="Curve">By the chance of a gap alone, for several chances, the greatest first.</param>
    /// <param name="ByChance">With the chance that the practice accepts.</param>
    /// <param name="WithSpares">One always ready, two always ready.</param>
    /// <param name="Proposed">The spares that the kind's own lives and leads ask for.</param>
    public sealed record KindCosts(
        IReadOnlyList<CertaintyOption> Curve,
        CertaintyOption ByChance,
        IReadOnlyList<CertaintyOption> WithSpares,
        int Proposed
    )
    {
        public CertaintyOption this[int spares] => spares == 0 ? ByChance : WithSpares[spares - 1];

        /// <summary>By the chance alone the next is ordered that early already: the rule asks for nothing more.</summary>
        public bool IsFree(int spares) => this[spares] with { Spares = 0 } == ByChance;
    }

    /// <param name="Mean">Minor units of the currency.</param>
    public sealed record UnitPrice(string Currency, int Units, double Mean);

    public sealed record Input : IEditInput
    {
        [FromDatabase]
        public uint Version { get; set; }

        [FormOnly]
        public bool Retire { get; set; }

        [Field("Spares")]
        public List<Line> Lines { get; set; } = [];
    }

    public sealed record Line : IFormRow
    {
        public Guid UnitKindId { get; set; }

        /// <summary>Always ready beside the one worn; 0 where the chance of a gap decides.</summary>
        public int Spares { get; set; }

        /// <summary>Of the kind as the form opened on it.</summary>
        [FromDatabase]
        public uint Version { get; set; }

        object IFormRow.Key => UnitKindId;

        string IFormRow.Describe(FieldFormatter words) => $"{words.Format(UnitKindId)}: {SparesText.Rule(Spares, words.Words)}";
    }

    public sealed record Outcome(int Changed);
}
