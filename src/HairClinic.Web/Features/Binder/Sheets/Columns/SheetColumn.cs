using System.Collections.Frozen;
using System.Linq.Expressions;

namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>One column of a sheet. The name is our format and stays English; the meaning is shown to people and translated.</summary>
public sealed record SheetColumn(string Name, ColumnType Type, string Meaning, string Example)
{
    public bool Required { get; init; }

    /// <summary>Other headings under which practices keep the same thing.</summary>
    public IReadOnlyList<string> Synonyms { get; init; } = [];

    public IReadOnlyList<SheetChoice> Choices { get; init; } = [];

    /// <summary>Bounds of a number, both included.</summary>
    public decimal Least { get; init; }

    public decimal Most { get; init; } = 1_000_000_000m;
}

/// <summary>One value of a choice column: the word we write, and the words we also read.</summary>
public sealed record SheetChoice(string Name, params string[] Synonyms)
{
    private readonly FrozenSet<string> _words = Synonyms.Append(Name).Select(WordNormalizer.Normalize).ToFrozenSet();

    /// <param name="plainWord">A word as <see cref="WordNormalizer"/> leaves it.</param>
    internal bool Matches(string plainWord) => _words.Contains(plainWord);
}

public enum ColumnType
{
    Text,
    Code,
    Date,

    /// <summary>Several dates in one cell, separated by <c>|</c>, oldest first.</summary>
    Dates,
    Time,
    WholeNumber,
    DecimalNumber,

    /// <summary>A length of time, in minutes.</summary>
    Minutes,
    Money,
    Currency,
    YesNo,
    Choice,
    Weekdays,
    Phone,
    Email,
}

/// <summary>One of the four sheets of a binder. The key is what a row is recognised by when the file is brought again.</summary>
public sealed record SheetKind(string Name, IReadOnlyList<SheetColumn> Columns, IReadOnlyList<SheetColumn> Key)
{
    public static SheetKind Clients { get; } = new("clients", ClientRow.Table.Columns, [ClientColumns.Code]);
    public static SheetKind Units { get; } = new("units", UnitRow.Table.Columns, [UnitColumns.Serial]);
    public static SheetKind Bonds { get; } = new("bonds", BondRow.Table.Columns, [BondColumns.Serial, BondColumns.AppliedOn]);
    public static SheetKind Visits { get; } =
        new("visits", VisitRow.Table.Columns, [VisitColumns.ClientCode, VisitColumns.Date, VisitColumns.Start]);

    /// <summary>In the order in which they must be brought: each refers only to those before it.</summary>
    public static IReadOnlyList<SheetKind> All { get; } = [Clients, Units, Bonds, Visits];

    public string FileName => Name + ".csv";

    public IReadOnlyList<string> Headers => [.. Columns.Select(column => column.Name)];

    public static SheetKind? Find(string name) =>
        All.FirstOrDefault(kind => string.Equals(kind.Name, name, StringComparison.OrdinalIgnoreCase));
}

/// <summary>
/// A sheet's columns in their order, each with the place of a row it stands for: how a cell is read into it, how it is written, and what
/// of the book is kept where a row is silent.
/// </summary>
public sealed class SheetSchema<TRow>
    where TRow : class, new()
{
    private readonly List<RowColumn> _columns = [];

    public IReadOnlyList<SheetColumn> Columns => [.. _columns.Select(c => c.Column)];

    public SheetSchema<TRow> Text(SheetColumn column, Expression<Func<TRow, string?>> at) =>
        Add(column, at, (cells, row, _) => cells.Text(row, column), CellFormatter.Format);

    public SheetSchema<TRow> Code(SheetColumn column, Expression<Func<TRow, string?>> at) =>
        Add(column, at, (cells, row, _) => cells.Code(row, column), CellFormatter.Format);

    public SheetSchema<TRow> Date(SheetColumn column, Expression<Func<TRow, LocalDate?>> at, Func<TRow, TRow, LocalDate?>? over = null) =>
        Add(column, at, (cells, row, _) => cells.Date(row, column), CellFormatter.Format, over);

    public SheetSchema<TRow> Time(SheetColumn column, Expression<Func<TRow, LocalTime?>> at, Func<TRow, TRow, LocalTime?>? over = null) =>
        Add(column, at, (cells, row, _) => cells.Time(row, column), CellFormatter.Format, over);

    public SheetSchema<TRow> WholeNumber(SheetColumn column, Expression<Func<TRow, int?>> at) =>
        Add(column, at, (cells, row, _) => cells.WholeNumber(row, column), CellFormatter.Format);

    public SheetSchema<TRow> Number(SheetColumn column, Expression<Func<TRow, decimal?>> at) =>
        Add(column, at, (cells, row, _) => cells.Number(row, column), CellFormatter.Format);

    public SheetSchema<TRow> YesNo(SheetColumn column, Expression<Func<TRow, bool?>> at) =>
        Add(column, at, (cells, row, _) => cells.YesNo(row, column), CellFormatter.Format);

    public SheetSchema<TRow> Choice<T>(SheetColumn column, Expression<Func<TRow, T?>> at, Func<TRow, TRow, T?>? over = null)
        where T : struct, Enum =>
        Add(column, at, (cells, row, _) => ChoiceWords.FromWord<T>(cells.Choice(row, column)), ChoiceWords.ToWord, over);

    /// <summary>A column that is read and looked at, and written from what another column holds.</summary>
    public SheetSchema<TRow> AddWithoutProperty(SheetColumn column, Action<CellReader, SheetRow> look, Func<TRow, string?> write)
    {
        _columns.Add(new(column, (_, cells, row) => look(cells, row), row => write(row) ?? "", (_, _, _) => { }));
        return this;
    }

    /// <param name="read">From a cell; the row holds what the columns before this one said.</param>
    /// <param name="over">Of a row and the book's, what stands; without it the row's where it says something.</param>
    public SheetSchema<TRow> Add<T>(
        SheetColumn column,
        Expression<Func<TRow, T>> at,
        Func<CellReader, SheetRow, TRow, T> read,
        Func<T, string?> write,
        Func<TRow, TRow, T>? over = null
    )
    {
        var get = at.Compile();
        var value = Expression.Parameter(typeof(T));
        var set = Expression.Lambda<Action<TRow, T>>(Expression.Assign(at.Body, value), at.Parameters[0], value).Compile();
        over ??= (own, book) => get(own) is { } said ? said : get(book);
        _columns.Add(
            new(
                column,
                (into, cells, row) => set(into, read(cells, row, into)),
                row => write(get(row)) ?? "",
                (into, own, book) => set(into, over(own, book))
            )
        );
        return this;
    }

    public TRow ReadRow(CellReader cells, SheetRow row)
    {
        var read = new TRow();
        foreach (var column in _columns)
            column.Read(read, cells, row);
        return read;
    }

    public IReadOnlyList<string> Cells(TRow row) => [.. _columns.Select(c => c.Write(row))];

    /// <summary>A row where it speaks, the book where it is silent.</summary>
    public TRow MergeWithBook(TRow row, TRow book)
    {
        var merged = new TRow();
        foreach (var column in _columns)
            column.Merge(merged, row, book);
        return merged;
    }

    private sealed record RowColumn(
        SheetColumn Column,
        Action<TRow, CellReader, SheetRow> Read,
        Func<TRow, string> Write,
        Action<TRow, TRow, TRow> Merge
    );
}
