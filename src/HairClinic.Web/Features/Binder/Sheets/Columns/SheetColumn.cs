using System.Collections.Frozen;

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
    private readonly FrozenSet<string> _words = Synonyms.Append(Name).Select(PlainWords.Normalize).ToFrozenSet();

    /// <param name="plainWord">A word as <see cref="PlainWords"/> leaves it.</param>
    internal bool Answers(string plainWord) => _words.Contains(plainWord);
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
