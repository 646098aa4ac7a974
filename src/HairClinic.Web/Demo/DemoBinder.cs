using HairClinic.Web.Features.Binder;
using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Demo;

/// <summary>The binder the invented practice would have kept: the same for the same day, wherever it is written.</summary>
public static class DemoBinder
{
    public static IReadOnlyDictionary<SheetKind, byte[]> GenerateCsv(LocalDate today) => GenerateCsv(DemoHistory.Generate(today));

    /// <returns>One CSV file a kind of sheet.</returns>
    public static IReadOnlyDictionary<SheetKind, byte[]> GenerateCsv(DemoHistory history) =>
        new Dictionary<SheetKind, byte[]>
        {
            [SheetKind.Clients] = Csv(SheetKind.Clients, history.Clients.Select(c => c.Cells())),
            [SheetKind.Units] = Csv(SheetKind.Units, history.Lives.SelectMany(l => Units(l, history.Today)).Select(u => u.Cells())),
            [SheetKind.Bonds] = Csv(SheetKind.Bonds, history.Lives.SelectMany(l => l.Bonds).Select(b => b.Row.Cells())),
            [SheetKind.Visits] = Csv(
                SheetKind.Visits,
                history.Lives.SelectMany(l => l.Visits).OrderBy(v => v.Day).ThenBy(v => v.Start).Select(v => v.Cells())
            ),
        };

    private static IEnumerable<UnitRow> Units(DemoClientSimulation life, LocalDate today)
    {
        var price = new SheetMoney(45_000 + life.Client.Kind.LifeDays.To * 150, life.Client.Salon.Currency);
        return life.Units.Select(u => u.ToBinderRow(life.Client.Code, life.Client.Salon.Name, today, price));
    }

    private static byte[] Csv(SheetKind kind, IEnumerable<IReadOnlyList<string>> rows) => SheetWriter.WriteForRoundTrip(kind.Headers, rows);
}
