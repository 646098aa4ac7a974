using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Shell.Edits;

namespace HairClinic.Web.Features.Settings;

/// <summary>What shortens or lengthens hold and life, as the practice assumes it before its own records tell.</summary>
public sealed class WearFactors(ClinicDbFactory databases, WriteOnce writes, IClock clock)
{
    private static readonly List<(LifetimeKind Quantity, KnownCovariate Habit)> Known =
    [
        .. Enum.GetValues<LifetimeKind>()
            .SelectMany(q => CovariateCatalog.All.Where(r => r.AssumedFactor(q) is not null).Select(r => (q, r.Habit))),
    ];

    public async Task<Input> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var rows = await db.WearFactors.AsNoTracking().ToListAsync(cancellation);
        return new Input
        {
            Lines =
            [
                .. Known.Select(k =>
                {
                    var row = rows.Find(r => r.Quantity == k.Quantity && r.Habit == k.Habit);
                    return new Line
                    {
                        Quantity = k.Quantity,
                        Habit = k.Habit,
                        Percent = row is null ? 100 : (int)Math.Round(100 * row.Factor),
                        Version = row?.Version ?? 0,
                    };
                }),
            ],
        };
    }

    /// <exception cref="Refusal">A factor no practice can work by.</exception>
    /// <exception cref="OvertakenException">Someone else changed one since the form opened.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(key, nameof(WearFactors), input, db => WriteAsync(db, input, cancellation), cancellation);
        }
        catch (DbUpdateException e) when (ConcurrentEdits.IsUniqueViolation(e, "wear_factors"))
        {
            throw new OvertakenException(e);
        }
    }

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        var rows = await db.WearFactors.ToListAsync(cancellation);
        var changed = 0;
        foreach (var line in input.Lines)
        {
            var row = rows.Find(r => r.Quantity == line.Quantity && r.Habit == line.Habit);
            var factor = (line.Percent ?? 100) / 100.0;
            if (row is not null)
                WriteOnce.ExpectVersion(db, row, line.Version);
            if (Math.Abs((row?.Factor ?? 1) - factor) < 0.001)
                continue;
            changed++;
            if (row is null)
                db.WearFactors.Add(new WearFactor(Guid.CreateVersion7(), line.Quantity, line.Habit, factor));
            else
                row.SetFactor(factor);
        }
        if (changed > 0)
            db.WorkItems.Add(WorkItemFactory.Recalculate(clock.GetCurrentInstant()));
        return new Outcome(changed);
    }

    public sealed record Input : IEditInput
    {
        [FromDatabase]
        public uint Version { get; set; }

        [FormOnly]
        public bool Retire { get; set; }

        [Field("What shortens wear")]
        public List<Line> Lines { get; set; } = [];
    }

    public sealed record Line : IFormRow
    {
        public LifetimeKind Quantity { get; set; }
        public KnownCovariate Habit { get; set; }

        /// <summary>Of the usual time; 100 changes nothing.</summary>
        public int? Percent { get; set; }

        /// <summary>Of the row the form opened on; 0 where there was none.</summary>
        [FromDatabase]
        public uint Version { get; set; }

        object IFormRow.Key => (Quantity, Habit);

        string IFormRow.Describe(FieldFormatter words) =>
            $"{words.Words[Quantity == LifetimeKind.Hold ? "How long a bond holds" : "How long a unit lasts"].Value}, {words.Words[CovariateCatalog.DefinitionOf(Habit).Label].Value}: {words.Format(Percent)} %";
    }

    public sealed record Outcome(int Changed);
}
