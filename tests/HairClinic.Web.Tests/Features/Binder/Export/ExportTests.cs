using System.Text;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Features.Binder.Sheets;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Binder.Export;

namespace HairClinic.Web.Tests.Features.Binder.Export;

public sealed class ExportTests(PgServer server)
{
    [Fact]
    public async Task A_book_kept_in_the_program_comes_out_and_brought_back_changes_nothing()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var binder = await clinic.ExportAsync();

        var back = await clinic.BringAllAsync(binder);

        Assert.Equal([(0, 0, 2), (0, 0, 1), (0, 0, 1), (0, 0, 1)], back.Select(o => (o.New, o.Changed, o.Unchanged)));
    }

    [Fact]
    public async Task A_book_kept_in_the_program_moves_to_a_fresh_practice_whole()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var binder = await clinic.ExportAsync();
        await using var fresh = await TestClinic.OpenAsync(server, Binders.TwoSalons);

        await fresh.BringAllAsync(binder);

        Binders.AssertSame(binder, await fresh.ExportAsync());
    }

    [Fact]
    public async Task The_form_for_people_makes_a_formula_plain_text_and_the_one_for_the_program_keeps_it()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        var program = await WriteAsync(clinic, forPeople: false);
        var people = await WriteAsync(clinic, forPeople: true);

        Assert.Contains("=HYPERLINK", program, StringComparison.Ordinal);
        Assert.DoesNotContain(",=HYPERLINK", people, StringComparison.Ordinal);
        var note = SheetReader.Read(Encoding.UTF8.GetBytes(people)).Sheet!.Rows[0].Cells[^1];
        Assert.False(note.StartsWith('='));
    }

    [Fact]
    public async Task Of_two_visits_at_the_same_moment_the_one_that_was_not_called_off_comes_out()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                Lay(scene);
                var first = scene.Db.ChangeTracker.Entries<Visit>().Single().Entity;
                scene.Book(scene.Clients[0], scene.Services[3], scene.Chairs[1], scene.People[0], first.StartsAt);
                first.Cancel();
            }
        );

        var visits = Encoding.UTF8.GetString((await clinic.ExportAsync())[SheetKind.Visits]);

        Assert.Contains("Chair 2", visits, StringComparison.Ordinal);
        Assert.DoesNotContain("Chair 1", visits, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sheet_longer_than_what_is_read_at_a_time_comes_out_whole_and_in_order()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                Lay(scene);
                // Five a day in each of two salons, one of them five hours behind, over 120 days.
                var first = Instant.FromUtc(2026, 1, 5, 9, 0);
                for (var n = 0; n < 120 * 5; n++)
                {
                    var at = first + Duration.FromDays(n / 5) + Duration.FromHours(2 * (n % 5));
                    scene.Book(scene.Clients[0], scene.Services[3], scene.Chairs[0], scene.People[0], at);
                    scene.Book(scene.Clients[1], scene.Services[3], scene.Chairs[^1], scene.People[0], at + Duration.FromHours(12));
                }
            }
        );

        var sheet = SheetReader.Read((await clinic.ExportAsync())[SheetKind.Visits]).Sheet!;

        // Client, salon, day and start come first.
        var rows = sheet.Rows.Select(r => (Day: r.Cells[2], Start: r.Cells[3], Code: r.Cells[0])).ToList();
        Assert.Equal(2 * 120 * 5 + 1, rows.Count);
        Assert.Equal(rows.Count, rows.Distinct().Count());
        Assert.Equal(
            rows.OrderBy(r => r.Day, StringComparer.Ordinal)
                .ThenBy(r => r.Start, StringComparer.Ordinal)
                .ThenBy(r => r.Code, StringComparer.Ordinal),
            rows
        );
    }

    [Fact]
    public async Task All_sheets_are_of_one_moment_whatever_is_written_meanwhile()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var lines = new Dictionary<string, int>();

        await clinic.UseAsync<Slice, bool>(
            clinic.Job,
            async slice =>
            {
                await slice.WriteSheetsAsync(
                    SheetKind.All,
                    forPeople: false,
                    async (kind, write) =>
                    {
                        using var file = new MemoryStream();
                        await write(file);
                        lines[kind.Name] = Encoding.UTF8.GetString(file.ToArray()).Split("\r\n").Length - 2;
                        // Between the first sheet and the others a client comes with a unit.
                        if (kind == SheetKind.Clients)
                            await clinic.ReadAsync(async db =>
                            {
                                var salon = await db.Salons.FirstAsync(TestContext.Current.CancellationToken);
                                var unitKind = await db.UnitKinds.FirstAsync(TestContext.Current.CancellationToken);
                                var client = new Client(Guid.CreateVersion7(), "C-9", "Late Comer", salon.Id);
                                db.Clients.Add(client);
                                db.HairSystems.Add(
                                    new HairSystem(Guid.CreateVersion7(), "S-9", client.Id, unitKind.Id, new LocalDate(2027, 1, 1))
                                );
                                return await db.SaveChangesAsync(TestContext.Current.CancellationToken);
                            });
                    },
                    TestContext.Current.CancellationToken
                );
                return true;
            }
        );

        Assert.Equal([("bonds", 1), ("clients", 2), ("units", 1), ("visits", 1)], lines.Select(l => (l.Key, l.Value)).Order());
        Assert.Equal(
            3,
            (await clinic.UseAsync<Slice, Slice.Screen>(clinic.Job, s => s.OpenAsync(TestContext.Current.CancellationToken))).Clients
        );
    }

    private static Task<string> WriteAsync(TestClinic clinic, bool forPeople) =>
        clinic.UseAsync<Slice, string>(
            clinic.Job,
            async slice =>
            {
                using var file = new MemoryStream();
                await slice.WriteSheetsAsync(
                    [SheetKind.Clients],
                    forPeople,
                    (_, write) => write(file),
                    TestContext.Current.CancellationToken
                );
                return Encoding.UTF8.GetString(file.ToArray());
            }
        );

    private static void Lay(Scene scene)
    {
        Binders.TwoSalons(scene);
        var salon = scene.Salons[0];
        var stylist = scene.Hire("Imre Castellan", StaffRole.Stylist, salon);
        var adhesive = scene.AddProduct("Adhesive A", Domain.Shelf.ProductKind.Adhesive, "water-based acrylic", "A1");
        var kind = scene.AddUnitKind("French lace cap", "French lace", "Workshop North");
        var client = scene.AddClient("C-1", "Ada Fenwickson", salon, "+441632960001");
        client.SetBirthDateAndNote(null, "=HYPERLINK(\"https://example.org\")");
        scene.AddClient("C-2", "Bram Larkmoor", scene.Salons[1]);
        var unit = scene.AddUnit(client, kind, new LocalDate(2026, 12, 1));
        scene.AddBond(client, unit, new LocalDate(2027, 1, 12), adhesive, Instant.FromUtc(2027, 1, 12, 10, 0));
        scene.Book(client, scene.Services[3], scene.Chairs[0], stylist, Instant.FromUtc(2027, 2, 9, 10, 0));
    }
}
