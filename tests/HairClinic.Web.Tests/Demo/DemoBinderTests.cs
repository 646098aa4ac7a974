using System.Text;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Visits;
using HairClinic.Web.Demo;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Features.Binder.Sheets;
using HairClinic.Web.Tests.Features.Binder;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Tests.Demo;

public sealed class DemoBinderTests(PgServer server)
{
    private static readonly LocalDate ExampleDay = new(2027, 2, 3);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public void The_example_in_the_repository_is_what_the_generator_writes_for_its_day()
    {
        foreach (var (kind, file) in DemoBinder.GenerateCsv(ExampleDay))
            Assert.Equal(Encoding.UTF8.GetString(Example(kind)), Encoding.UTF8.GetString(file));
    }

    [Fact]
    public async Task What_is_brought_is_new_once_and_taken_out_and_brought_to_a_fresh_practice_comes_out_the_same_to_the_byte()
    {
        await using var old = await TestClinic.OpenAsync(server, Lay);
        var first = await old.BringAllAsync(SheetKind.All.ToDictionary(kind => kind, Example));
        var binder = await old.ExportAsync();

        await using var fresh = await TestClinic.OpenAsync(server, Lay);
        await fresh.BringAllAsync(binder);
        var again = await old.BringAllAsync(binder);

        Assert.Equal(300, first[0].New);
        Assert.All(first, outcome => Assert.Equal((0, 0), (outcome.Changed, outcome.Unchanged)));
        Binders.AssertSame(binder, await fresh.ExportAsync());
        Assert.All(again, outcome => Assert.Equal((0, 0), (outcome.New, outcome.Changed)));
        Assert.Equal(first.Select(o => o.New), again.Select(o => o.Unchanged));
    }

    [Theory]
    [InlineData("2026-11-25")]
    [InlineData("2027-03-28")]
    [InlineData("2028-02-29")]
    public async Task The_binder_of_any_day_has_work_for_today_in_every_salon_and_each_head_wears_one_unit(string day)
    {
        var today = NodaTime.Text.LocalDatePattern.Iso.Parse(day).Value;
        await using var clinic = await TestClinic.OpenAsync(server, Lay, today.At(new LocalTime(11, 0)).InUtc().ToInstant());
        await clinic.BringAllAsync(DemoBinder.GenerateCsv(today));

        var visits = await clinic.ReadAsync(db =>
            db.Visits.Where(v => v.Day == today && v.State == VisitState.Booked)
                .GroupBy(v => v.SalonId)
                .Select(g => g.Count())
                .ToListAsync(Cancel)
        );

        Assert.Equal(DemoPractice.Salons.Count, visits.Count);
        var (open, bonded) = await clinic.ReadAsync(async db =>
            (
                await db.Bonds.Where(b => b.RemovedOn == null).Select(b => b.HairSystemId).ToListAsync(Cancel),
                await db.HairSystems.Where(u => u.State == UnitState.Bonded).Select(u => u.Id).ToListAsync(Cancel)
            )
        );
        Assert.InRange(open.Count, 200, 300);
        Assert.Equal(open.Order(), bonded.Order());
    }

    private static void Lay(Scene scene)
    {
        scene.AddPractice("A practice with an old book");
        foreach (var salon in DemoPractice.Salons)
            scene.OpenSalon(salon.Name, salon.Zone, salon.Currency, chairs: 0);
    }

    private static byte[] Example(SheetKind kind) =>
        File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Demo", "Binder", kind.FileName));
}
