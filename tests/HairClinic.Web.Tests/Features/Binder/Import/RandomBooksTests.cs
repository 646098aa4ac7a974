using System.Globalization;
using HairClinic.Web.Features.Binder;
using HairClinic.Web.Features.Binder.Sheets;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Binder.Import;

/// <summary>Books made up by chance: whatever they say, what comes out goes in again and comes out the same.</summary>
public sealed class RandomBooksTests(PgServer server)
{
    private static readonly string[] Nasty =
    [
        "=1+1",
        "a;b,c",
        "\"quoted\"",
        "two\r\nlines",
        "-12",
        "@home",
        "Ærøskøbing",
        " tab\tinside",
        "'apostrophe",
    ];
    private static readonly string[] UnitStates =
    [
        "accepted",
        "prepared",
        "resting",
        "bonded",
        "retired",
        "ordered",
        "emergency spare",
        "",
        "",
        "",
    ];

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    public async Task What_comes_out_of_a_random_book_goes_into_a_fresh_one_and_comes_out_the_same(int seed)
    {
        await using var old = await TestClinic.OpenAsync(server, Binders.TwoSalons);
        await old.BringAllAsync(RandomBook(new Random(seed)));
        var binder = await old.ExportAsync();

        await using var fresh = await TestClinic.OpenAsync(server, Binders.TwoSalons);
        await fresh.BringAllAsync(binder);
        var back = await old.BringAllAsync(binder);

        Binders.AssertSame(binder, await fresh.ExportAsync());
        Assert.All(back, outcome => Assert.Equal((0, 0), (outcome.New, outcome.Changed)));
    }

    private static Dictionary<SheetKind, byte[]> RandomBook(Random random)
    {
        var clients = Enumerable
            .Range(1, 12)
            .Select(i =>
                new[]
                {
                    $"C{i}",
                    $"Client {Some(random, Nasty)}",
                    Or(random, Some(random, Nasty)),
                    Some(random, "Elm Row", "Kite Street"),
                    Or(random, $"+44163296{i:0000}"),
                    Or(random, $"c{i}@example.org"),
                    Or(random, "Mon Wed"),
                    Or(random, "1980-02-29"),
                    Or(random, "dry"),
                    Or(random, "heavy"),
                    Or(random, "0.5"),
                    Or(random, "3"),
                    "",
                    Or(random, Some(random, Nasty)),
                }
            )
            .ToList();
        var units = new List<string[]>();
        var bonds = new List<string[]>();
        var visits = new List<string[]>();
        foreach (var client in clients)
        {
            var day = new LocalDate(2025, 1, 1).PlusDays(random.Next(300));
            for (var u = 1; u <= random.Next(4); u++)
            {
                var serial = $"{client[0]}-{u}";
                var state = Some(random, UnitStates);
                var ordered = Or(random, Iso(day.PlusDays(-60)));
                units.Add([
                    serial,
                    random.Next(9) == 0 && state != "bonded" ? "" : client[0],
                    Or(random, "Workshop =North"),
                    Some(random, "French lace", "Base nobody knew"),
                    "",
                    state,
                    "",
                    ordered,
                    Or(random, $"{Iso(day.PlusDays(-20))} | {Iso(day.PlusDays(-5))}"),
                    state == "ordered" ? Or(random, Iso(day.PlusDays(-30))) : "",
                    "",
                    "",
                    "",
                    "",
                    "",
                    Some(random, "0", "1", ""),
                    "",
                    "",
                    state == "retired" ? Iso(day.PlusDays(400)) : "",
                    Or(random, Some(random, Nasty)),
                    Or(random, "Kite Street"),
                    random.Next(2) == 0 ? "1234.50" : "",
                    Some(random, "USD", ""),
                ]);
                if (state is "ordered" or "" or "retired")
                    continue;
                for (var b = 0; b <= random.Next(4); b++)
                {
                    var off = day.PlusDays(random.Next(1, 40));
                    var lifted = random.Next(3) == 0;
                    var liftedOn = lifted ? Or(random, Iso(off)) : "";
                    var about = lifted && liftedOn == "" && off > day.PlusDays(1) && random.Next(2) == 0;
                    bonds.Add([
                        serial,
                        client[0],
                        Iso(day),
                        Or(random, "14:30"),
                        Or(random, "Adhesive A, water-based"),
                        Or(random, "L1"),
                        "3",
                        Some(random, "liquid", "tape", ""),
                        Or(random, "yes"),
                        Iso(off),
                        lifted
                            ? "lifted"
                            : Some(random, "scheduled", "style", "salon's choice", "brought in", "rest", "skin needs care", ""),
                        liftedOn,
                        "",
                        lifted ? "nape" : "",
                        Or(random, Iso(day)),
                        Or(random, "Imre Castellan"),
                        about ? Iso(off.PlusDays(-2)) : "",
                        about ? Iso(off.PlusDays(-1)) : "",
                    ]);
                    // Half of all heads end with an open bond, on whatever unit comes last.
                    day = off.PlusDays(random.Next(3));
                }
            }
            if (bonds.LastOrDefault() is { } last && last[1] == client[0] && random.Next(2) == 0)
                (last[9], last[10], last[11], last[13], last[16], last[17]) = ("", "", "", "", "", "");
            for (var v = 0; v < random.Next(5); v++)
            {
                // Who has not come on a day that has not come either is no state of a visit.
                var on = new LocalDate(2026, 12, 1).PlusDays(random.Next(120));
                visits.Add([
                    client[0],
                    Some(random, "Elm Row", "Kite Street"),
                    Iso(on),
                    $"{random.Next(8, 18):00}:15",
                    Or(random, "75"),
                    Some(random, "Rebond", "Something of our own"),
                    "",
                    "",
                    Some(random, "", "booked", "cancelled", on < new LocalDate(2027, 2, 3) ? "did not come" : ""),
                    Or(random, Some(random, Nasty)),
                ]);
            }
        }
        return new()
        {
            [SheetKind.Clients] = SheetWriter.WriteForRoundTrip(SheetKind.Clients.Headers, clients),
            [SheetKind.Units] = SheetWriter.WriteForRoundTrip(SheetKind.Units.Headers, [.. units, NobodysUnit]),
            [SheetKind.Bonds] = SheetWriter.WriteForRoundTrip(SheetKind.Bonds.Headers, bonds),
            [SheetKind.Visits] = SheetWriter.WriteForRoundTrip(
                SheetKind.Visits.Headers,
                visits.DistinctBy(v => VisitRow.Key(v[0], null, null) + v[2])
            ),
        };
    }

    private static readonly string[] NobodysUnit =
    [
        "STOCK-1",
        "",
        "",
        "Silk top",
        "",
        "emergency spare",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
    ];

    private static string Some(Random random, params string[] words) => words[random.Next(words.Length)];

    private static string Or(Random random, string word) => random.Next(2) == 0 ? word : "";

    private static string Iso(LocalDate day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
