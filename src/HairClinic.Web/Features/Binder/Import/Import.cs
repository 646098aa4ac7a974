using HairClinic.Web.AccessLog;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Features.Binder;

/// <summary>A practice's own rows become its book: looked at first, brought only when a person says so, all of a file or nothing.</summary>
public sealed class Import(ClinicDbFactory databases, WriteOnce writes, AccessLogStore log, IClock clock)
{
    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await db
            .PracticeSettings.AsNoTracking()
            .Select(s => new Screen(
                s.Region,
                db.Salons.OrderBy(x => x.Id).Select(x => x.Currency).FirstOrDefault() ?? "GBP",
                db.Salons.OrderBy(x => x.Name).Select(x => x.Name).ToList()
            ))
            .SingleAsync(cancellation);
    }

    /// <summary>What bringing the sheet would do. Nothing is written.</summary>
    public async Task<ImportReport> PreviewAsync(ImportStep order, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await SheetImport.For(db, order, clock.GetCurrentInstant()).RunAsync(cancellation);
    }

    /// <exception cref="Refusal">A row fails, or the file names things that may not be created; nothing was written.</exception>
    /// <exception cref="OvertakenException">Someone changed one of the rows meanwhile; nothing was written.</exception>
    public async Task<Outcome> SaveAsync(Guid key, SheetDraft draft, bool createMissing, CancellationToken cancellation)
    {
        var order = draft.Order ?? throw new Refusal("Some questions about this file are not answered yet.");
        SheetImport? import = null;
        try
        {
            return await writes.RunAsync(key, nameof(Import), Receipt.For(draft, createMissing), WriteAsync, cancellation);
        }
        catch (DbUpdateException e) when (DescribeViolation(e) is { } why)
        {
            var line = e.Entries.Select(entry => import?.SourceLineOf(entry.Entity)).FirstOrDefault(l => l is not null);
            throw new Refusal(
                "Row {0} no longer fits the book: {1} Nothing was written; look at the preview again.",
                line is { } some ? some : "?",
                why
            );
        }

        async Task<Outcome> WriteAsync(ClinicDb db)
        {
            import = SheetImport.For(db, order, clock.GetCurrentInstant());
            var report = await import.RunAsync(cancellation);
            if (report.Problems.Count > 0)
                throw new Refusal("{0} rows cannot be brought. Nothing was written; look at the preview again.", report.Problems.Count);
            if (report.Missing.Count > 0 && !createMissing)
                throw new Refusal("The file names things the book does not have. Say that they may be created, or correct the file.");
            await db.Database.BeginTransactionAsync(cancellation);
            await log.NoteAsync(
                db,
                AccessAction.ImportedBinder,
                clientId: null,
                reason: $"{report.Sheet}: {report.New} new, {report.Changed} changed",
                cancellation: cancellation
            );
            return new Outcome(report.Sheet, report.New, report.Changed, report.Unchanged);
        }
    }

    internal static string? DescribeViolation(DbUpdateException e) =>
        (e.InnerException as PostgresException)?.ConstraintName switch
        {
            null => null,
            // Whoever has it may be a client whom the one who imports may not see: nothing is said of them.
            ClientMap.CodeOnce => "this code cannot be used; give the row another.",
            "ex_visits_chair" => "the chair is taken at that time.",
            "ex_visit_segments_hands" => "the stylist is busy at that time.",
            BondMap.OpenPerUnit => "the unit has another open bond.",
            BondMap.OpenPerHead => "the client has another open bond.",
            _ => "someone else wrote the same meanwhile.",
        };

    /// <param name="Region">Whose national phone numbers are taken to be meant.</param>
    /// <param name="Currency">Of amounts that name none.</param>
    public sealed record Screen(string Region, string Currency, IReadOnlyList<string> Salons);

    public sealed record Outcome(string Sheet, int New, int Changed, int Unchanged);

    /// <summary>What was confirmed, without the rows themselves: their hash stands for them.</summary>
    private sealed record Receipt(
        string Sheet,
        string FileHash,
        IReadOnlyList<string?> Columns,
        string? Dates,
        string? Mark,
        string Region,
        string Currency,
        bool CreateMissing
    )
    {
        public static Receipt For(SheetDraft draft, bool createMissing) =>
            new(
                draft.Mapping.Kind.Name,
                draft.FileHash,
                [.. draft.Mapping.Kind.Columns.Select(draft.Mapping.HeaderOf)],
                draft.DateOrder?.ToString(),
                draft.DecimalMark?.ToString(),
                draft.Region,
                draft.Currency,
                createMissing
            );
    }
}

/// <summary>
/// A file on its way in: what was found out about it, and what a person decided. Immutable; each decision gives a
/// new draft. It becomes an order once nothing is left to ask.
/// </summary>
public sealed record SheetDraft(Sheet Sheet, string FileHash, ColumnMapping Mapping, string Region, string Currency)
{
    /// <summary>What a person chose; null where the cells themselves settle it or nobody was asked yet.</summary>
    public DateOrder? ChosenDates { get; init; }

    public DecimalMark? ChosenMark { get; init; }

    public ConventionEvidence<DateOrder> Dates { get; } = DateOrderDetector.Detect(Sheet, Mapping);

    public ConventionEvidence<DecimalMark> Marks { get; } = DecimalMarkDetector.Detect(Sheet, Mapping);

    public DateOrder? DateOrder => ChosenDates ?? Dates.Settled;

    public DecimalMark? DecimalMark => ChosenMark ?? Marks.Settled;

    public bool AsksDates => Dates.Settled is null;

    public bool AsksMark => Marks.Settled is null;

    public ImportStep? Order =>
        Mapping.IsComplete && DateOrder is { } dates && DecimalMark is { } mark
            ? new ImportStep(Sheet, Mapping, new SheetConventions(dates, mark, Region, Currency))
            : null;

    public static (SheetDraft? Draft, SheetProblem? Problem) FromFile(
        SheetKind kind,
        ReadOnlyMemory<byte> file,
        string region,
        string currency
    )
    {
        var reading = SheetReader.Read(file);
        return reading.IsReadable
            ? (
                new(
                    reading.Sheet,
                    Convert.ToHexString(SHA256.HashData(file.Span)),
                    ColumnMapping.Propose(kind, reading.Sheet.Headers),
                    region,
                    currency
                ),
                null
            )
            : (null, reading.Problem);
    }

    // Not "with": what the cells say depends on which column they feed.
    public SheetDraft WithMapping(ColumnMapping mapping) =>
        new(Sheet, FileHash, mapping, Region, Currency) { ChosenDates = ChosenDates, ChosenMark = ChosenMark };
}
