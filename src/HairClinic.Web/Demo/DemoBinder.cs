using HairClinic.Web.Features.Binder.Rows;
using HairClinic.Web.Features.Binder.Sheets;
using HairClinic.Web.Features.Binder.Sheets.Columns;
using NodaTime;

namespace HairClinic.Web.Demo;

/// <summary>The binder the invented practice would have kept: the same for the same day, wherever it is written.</summary>
public static class DemoBinder
{
    private const int Seed = 20_241;

    /// <returns>One CSV file a kind of sheet.</returns>
    public static IReadOnlyDictionary<SheetKind, byte[]> Write(LocalDate today)
    {
        // Chance for show, not for secrets: a fixed seed makes the same book again.
        var random = new Random(Seed);
        var diary = new DemoDiary(random, today);
        var (number, serial) = (0, 0);
        var clients = new List<ClientRow>();
        var lives = new List<DemoLife>();
        foreach (var salon in DemoPractice.Salons)
        {
            for (var i = 0; i < salon.Clients; i++)
            {
                var client = DemoClient.Invent(++number, salon, random, today);
                var life = new DemoLife(client, diary, random, today, () => $"U-{++serial:0000}");
                life.Live();
                clients.Add(client.Row(random));
                lives.Add(life);
            }
        }
        return new Dictionary<SheetKind, byte[]>
        {
            [SheetKind.Clients] = Csv(SheetKind.Clients, clients.Select(c => c.Cells())),
            [SheetKind.Units] = Csv(SheetKind.Units, lives.SelectMany(l => l.Units).Select(u => u.Cells())),
            [SheetKind.Bonds] = Csv(SheetKind.Bonds, lives.SelectMany(l => l.Bonds).Select(b => b.Cells())),
            [SheetKind.Visits] = Csv(
                SheetKind.Visits,
                lives.SelectMany(l => l.Visits).OrderBy(v => v.Day).ThenBy(v => v.Start).Select(v => v.Cells())
            ),
        };
    }

    private static byte[] Csv(SheetKind kind, IEnumerable<IReadOnlyList<string>> rows) => SheetWriter.WriteForRoundTrip(kind.Headers, rows);
}
