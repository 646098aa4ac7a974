using System.Linq.Expressions;

namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>
/// A sheet's columns in their order, each with the place of a row it stands for: how a cell is read into it, how it is written, and what
/// of the book is kept where a row is silent.
/// </summary>
public sealed class RowTable<TRow>
    where TRow : class, new()
{
    private readonly List<RowColumn> _columns = [];

    public IReadOnlyList<SheetColumn> Columns => [.. _columns.Select(c => c.Column)];

    public RowTable<TRow> Text(SheetColumn column, Expression<Func<TRow, string?>> at) =>
        Add(column, at, (cells, row, _) => cells.Text(row, column), CellText.Format);

    public RowTable<TRow> Code(SheetColumn column, Expression<Func<TRow, string?>> at) =>
        Add(column, at, (cells, row, _) => cells.Code(row, column), CellText.Format);

    public RowTable<TRow> Date(SheetColumn column, Expression<Func<TRow, LocalDate?>> at, Func<TRow, TRow, LocalDate?>? over = null) =>
        Add(column, at, (cells, row, _) => cells.Date(row, column), CellText.Format, over);

    public RowTable<TRow> Time(SheetColumn column, Expression<Func<TRow, LocalTime?>> at, Func<TRow, TRow, LocalTime?>? over = null) =>
        Add(column, at, (cells, row, _) => cells.Time(row, column), CellText.Format, over);

    public RowTable<TRow> WholeNumber(SheetColumn column, Expression<Func<TRow, int?>> at) =>
        Add(column, at, (cells, row, _) => cells.WholeNumber(row, column), CellText.Format);

    public RowTable<TRow> Number(SheetColumn column, Expression<Func<TRow, decimal?>> at) =>
        Add(column, at, (cells, row, _) => cells.Number(row, column), CellText.Format);

    public RowTable<TRow> YesNo(SheetColumn column, Expression<Func<TRow, bool?>> at) =>
        Add(column, at, (cells, row, _) => cells.YesNo(row, column), CellText.Format);

    public RowTable<TRow> Choice<T>(SheetColumn column, Expression<Func<TRow, T?>> at, Func<TRow, TRow, T?>? over = null)
        where T : struct, Enum =>
        Add(column, at, (cells, row, _) => ChoiceWords.Read<T>(cells.Choice(row, column)), ChoiceWords.ToWord, over);

    /// <summary>A column that is read and looked at, and written from what another column holds.</summary>
    public RowTable<TRow> Beside(SheetColumn column, Action<CellReader, SheetRow> look, Func<TRow, string?> write)
    {
        _columns.Add(new(column, (_, cells, row) => look(cells, row), row => write(row) ?? "", (_, _, _) => { }));
        return this;
    }

    /// <param name="read">From a cell; the row holds what the columns before this one said.</param>
    /// <param name="over">Of a row and the book's, what stands; without it the row's where it says something.</param>
    public RowTable<TRow> Add<T>(
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

    public TRow Read(CellReader cells, SheetRow row)
    {
        var read = new TRow();
        foreach (var column in _columns)
            column.Read(read, cells, row);
        return read;
    }

    public IReadOnlyList<string> Cells(TRow row) => [.. _columns.Select(c => c.Write(row))];

    /// <summary>A row where it speaks, the book where it is silent.</summary>
    public TRow Over(TRow row, TRow book)
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
