using HairClinic.Web.Data;
using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Features.Binder;

/// <summary>
/// What bringing the four sheets has in common: rows are read one by one and added to the context, what fails is
/// noted and the rest goes on, so that one look shows every row that will fail. Saving is the caller's, if at all.
/// </summary>
public abstract class SheetImport(ClinicDb db, ImportStep order, Instant now)
{
    private readonly List<ImportProblem> _problems = [];
    private readonly Dictionary<(MissingKind What, string Name), int> _missing = [];
    private readonly Dictionary<string, int> _seen = new(StringComparer.Ordinal);
    private readonly Dictionary<Guid, int> _lines = [];
    private readonly List<ImportProblem> _doubts = [];
    private readonly HashSet<int> _added = [];
    private readonly HashSet<int> _changed = [];
    private readonly HashSet<int> _unchanged = [];

    protected ClinicDb Db => db;

    protected Instant Now => now;

    protected SheetConventions Conventions => order.Conventions;

    protected CellReader Cells { get; } = new(order.Mapping, order.Conventions);

    public static SheetImport For(ClinicDb db, ImportStep order, Instant now) =>
        order.Kind.Name switch
        {
            "clients" => new ImportClients(db, order, now),
            "units" => new ImportUnits(db, order, now),
            "bonds" => new ImportBonds(db, order, now),
            _ => new ImportVisits(db, order, now),
        };

    /// <exception cref="Refusal">A column that every row needs has no source.</exception>
    public async Task<ImportReport> RunAsync(CancellationToken cancellation)
    {
        if (order.Mapping.MissingRequired.Concat(order.Mapping.MissingKey).FirstOrDefault() is { } lacking)
            throw new Refusal("Say which heading of the file is the column “{0}”.", lacking.Name);
        _problems.AddRange(order.Sheet.RowProblems.Select(p => new ImportProblem(p.Row ?? 0, null, null, null, p.Sentence)));
        await LoadAsync(cancellation);
        foreach (var row in order.Sheet.Rows)
            Try(row);
        await FinishAsync(cancellation);
        _problems.AddRange(Cells.Problems.Select(p => new ImportProblem(p.Row, p.Column, p.Value, p.Expected, null)));
        var failing = _problems.Select(p => p.Row).ToHashSet();
        return new ImportReport(
            order.Kind.Name,
            _added.Count(row => !failing.Contains(row)),
            _changed.Count(row => !failing.Contains(row)),
            _unchanged.Count(row => !failing.Contains(row)),
            [.. _problems.OrderBy(p => p.Row)],
            [.. _missing.OrderBy(m => m.Key).Select(m => new MissingReference(m.Key.What, m.Key.Name, m.Value))]
        )
        {
            Doubts = [.. _doubts.OrderBy(d => d.Row)],
        };
    }

    /// <summary>The line a row of the database came from, when the database refuses it after all.</summary>
    public int? SourceLineOf(object entity)
    {
        var id = entity switch
        {
            VisitSegment segment => segment.VisitId,
            BondProduct product => product.BondId,
            PracticeOwned owned => owned.Id,
            _ => Guid.Empty,
        };
        return _lines.TryGetValue(id, out var line) ? line : null;
    }

    protected abstract Task LoadAsync(CancellationToken cancellation);

    protected abstract void ReadRow(SheetRow row);

    /// <summary>What can only be judged with all rows at hand.</summary>
    protected virtual Task FinishAsync(CancellationToken cancellation) => Task.CompletedTask;

    /// <summary>Reads a row's cells; null when one of them cannot be read, which is noted already.</summary>
    protected T? Read<T>(SheetRow row, SheetSchema<T> table)
        where T : class, new()
    {
        var before = Cells.Problems.Count;
        var value = table.ReadRow(Cells, row);
        return Cells.Problems.Count == before ? value : null;
    }

    /// <summary>Whether this is the first row with that key; a second one is noted.</summary>
    protected bool IsFirst(SheetRow row, string key)
    {
        if (_seen.TryAdd(key, row.Row))
            return true;
        Expect(row, order.Kind.Key[0], "a row of its own: the same one stands in row {0}", _seen[key]);
        return false;
    }

    protected void Expect(SheetRow row, SheetColumn column, string template, params object[] arguments) =>
        _problems.Add(
            new ImportProblem(
                row.Row,
                order.Mapping.HeaderOf(column) ?? column.Name,
                order.Mapping.CellOf(row, column) ?? "",
                new Sentence(template, arguments),
                null
            )
        );

    /// <summary>The row can be brought; whoever brings it looks at this first.</summary>
    protected void Doubt(SheetRow row, string template, params object[] arguments) =>
        _doubts.Add(new ImportProblem(row.Row, null, null, null, new Sentence(template, arguments)));

    protected void Refuse(int line, string template, params object[] arguments) =>
        _problems.Add(new ImportProblem(line, null, null, null, new Sentence(template, arguments)));

    /// <summary>Finds a thing by name; one the book lacks is made at once and listed, to be kept only if a person says so.</summary>
    protected T Find<T>(NameIndex<T> book, MissingKind what, string name, Func<T> make, string? scope = null)
        where T : class
    {
        var key = scope is null ? name : $"{scope}: {name}";
        var thing = book.Find(key);
        if (thing is null)
        {
            book.Add(key, thing = make());
            _missing[(what, key)] = 0;
        }
        // Capitals may differ between rows; what is listed is the first spelling.
        var listed = _missing.Keys.FirstOrDefault(m => m.What == what && string.Equals(m.Name, key, StringComparison.OrdinalIgnoreCase));
        if (listed.Name is not null)
            _missing[listed]++;
        return thing;
    }

    protected void CountNew(SheetRow row, PracticeOwned entity)
    {
        _added.Add(row.Row);
        _lines[entity.Id] = row.Row;
    }

    protected void CountExisting(SheetRow row, PracticeOwned entity, bool differs)
    {
        if (!differs)
        {
            _unchanged.Add(row.Row);
            return;
        }
        _changed.Add(row.Row);
        _lines[entity.Id] = row.Row;
    }

    protected static string Listed(IEnumerable<string> names) => string.Join(", ", names);

    private void Try(SheetRow row)
    {
        try
        {
            ReadRow(row);
        }
        catch (Refusal refusal)
        {
            Refuse(row.Row, refusal.Sentence, [.. refusal.Arguments.Select(Spoken)]);
        }
    }

    private static object Spoken(object argument) =>
        argument switch
        {
            LocalDate day => CellFormatter.Format(day),
            Enum state => state.ToString(),
            IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
            _ => argument,
        };
}

/// <summary>A row that cannot be brought: where, what it says, and either what was expected there or why the book refuses it.</summary>
/// <param name="Column">The file's own heading; null when it concerns the row as a whole.</param>
/// <param name="Expected">“a date such as …” where the cell is wrong.</param>
/// <param name="Refused">A sentence, where the cell is fine and the book says no.</param>
public sealed record ImportProblem(int Row, string? Column, string? Value, Sentence? Expected, Sentence? Refused);

/// <summary>What bringing a sheet does, or would do. A row that cannot be brought counts as neither new nor changed.</summary>
public sealed record ImportReport(
    string Sheet,
    int New,
    int Changed,
    int Unchanged,
    IReadOnlyList<ImportProblem> Problems,
    IReadOnlyList<MissingReference> Missing
)
{
    /// <summary>Rows that can be brought, and that somebody should look at first.</summary>
    public IReadOnlyList<ImportProblem> Doubts { get; init; } = [];
}

/// <summary>One sheet to bring, with everything a person decided about how to read it.</summary>
public sealed record ImportStep(Sheet Sheet, ColumnMapping Mapping, SheetConventions Conventions)
{
    public SheetKind Kind => Mapping.Kind;
}

/// <summary>Something the file names that the book does not have yet. It is created only when a person says so.</summary>
/// <param name="What">Workshop, base, unit kind, product, lot, service, stylist or chair.</param>
/// <param name="Rows">In how many rows it is named.</param>
public sealed record MissingReference(MissingKind What, string Name, int Rows);

public enum MissingKind
{
    Workshop,
    Base,
    UnitKind,
    Product,
    Lot,
    Service,
    Stylist,
    Chair,
}
