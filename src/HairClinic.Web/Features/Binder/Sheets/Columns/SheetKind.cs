namespace HairClinic.Web.Features.Binder.Sheets;

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
