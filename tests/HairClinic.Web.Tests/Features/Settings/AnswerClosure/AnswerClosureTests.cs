using HairClinic.Domain.Checks;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Orders;
using HairClinic.Domain.Practices;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;
using HairClinic.Web.Workers;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Settings.AnswerClosure;

namespace HairClinic.Web.Tests.Features.Settings.AnswerClosure;

public sealed class AnswerClosureTests(PgServer server)
{
    private static readonly LocalDate First = new(2024, 1, 10);
    private static readonly LocalDate Today = new(2027, 2, 3);
    private Person _manager = null!;
    private Person _desk = null!;
    private Salon _salon = null!;
    private UnitKind _kind = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_closure_at_new_year_that_nobody_entered_is_proposed_and_entered_with_one_tap()
    {
        await using var clinic = await OpenAsync();
        await RunAsync(clinic);

        var row = Assert.Single(await LookAsync(clinic));
        Assert.Equal(("Workshop North", 3), (row.Workshop, row.Years));
        Assert.InRange(Period.DaysBetween(new LocalDate(2026, 12, 20), row.From), -7, 3);
        Assert.InRange(Period.DaysBetween(new LocalDate(2027, 1, 6), row.To), -3, 7);
        await AnswerAsync(clinic, row, enter: true);

        var workshop = await WorkshopAsync(clinic);
        Assert.Equal([2024, 2025, 2026, 2027, 2028], workshop.Closures.Select(c => c.From.Year).Order());
        Assert.All(workshop.Closures, c => Assert.Equal("Closed every year", c.Reason));
        var before = await P90Async(clinic);
        await RunAsync(clinic);
        Assert.Empty(await LookAsync(clinic));
        Assert.True(await P90Async(clinic) < before);
        await Refused.SayingAsync("Somebody answered this a moment ago. Open the list again.", () => AnswerAsync(clinic, row, enter: true));
    }

    [Fact]
    public async Task A_no_enters_nothing_and_it_is_not_asked_again()
    {
        await using var clinic = await OpenAsync();
        await RunAsync(clinic);

        await AnswerAsync(clinic, Assert.Single(await LookAsync(clinic)), enter: false);
        await RunAsync(clinic);

        Assert.Empty(await LookAsync(clinic));
        Assert.Empty((await WorkshopAsync(clinic)).Closures);
        Assert.Equal(1, await clinic.ReadAsync(db => db.DateChecks.CountAsync(Cancel)));
    }

    [Fact]
    public async Task Asked_night_after_night_it_is_one_question()
    {
        await using var clinic = await OpenAsync();
        await RunAsync(clinic);

        await RunAsync(clinic);

        Assert.Single(await LookAsync(clinic));
    }

    [Fact]
    public async Task A_desk_enters_no_closures()
    {
        await using var clinic = await OpenAsync();
        await RunAsync(clinic);

        await Refused.SayingAsync(
            "This is not yours to change. Ask somebody of the client's own salon, or a manager.",
            () => AnswerAsync(clinic, Assert.Single(LookAsync(clinic).Result), enter: true, clinic.Acting(_desk, _salon))
        );
    }

    // Simulated orders of three years, 60 a year; nothing is worked from 20 December for eighteen days.
    private Task<TestClinic> OpenAsync() =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("North");
                _salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 1);
                _manager = scene.Hire("Manager", StaffRole.Manager, _salon);
                _desk = scene.Hire("Desk", StaffRole.FrontDesk, _salon);
                _kind = scene.AddUnitKind("Everyday", "Silk top", "Workshop North");
                var random = new Random(4);
                for (var i = 0; i < 180; i++)
                {
                    var (on, days) = (First.PlusDays(random.Next(1000)), Math.Exp(Math.Log(56) + 0.2 * Normal(random)));
                    var came = on;
                    for (var worked = 0; worked < days; worked += IsClosed(came) ? 0 : 1)
                        came = came.PlusDays(1);
                    if (came > Today)
                        continue;
                    var unit = new HairSystem(Guid.CreateVersion7(), $"U-{i}", null, _kind.Id, on);
                    unit.ImportState(
                        UnitState.Retired,
                        new UnitDates
                        {
                            OrderedOn = on,
                            ArrivedOn = came,
                            RetiredOn = came,
                        },
                        "worn out"
                    );
                    scene.Db.HairSystems.Add(unit);
                }
            }
        );

    private static bool IsClosed(LocalDate day)
    {
        var from = new LocalDate(day.Month >= 7 ? day.Year : day.Year - 1, 12, 20);
        return day >= from && day < from.PlusDays(18);
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private Task<IReadOnlyList<Slice.Row>> LookAsync(TestClinic clinic) =>
        clinic.UseAsync<Slice, IReadOnlyList<Slice.Row>>(
            clinic.Acting(_manager, _salon),
            s => s.OpenAsync(_kind.WorkshopId!.Value, Cancel)
        );

    private Task<Slice.Outcome> AnswerAsync(TestClinic clinic, Slice.Row row, bool enter, PersonActor? by = null) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            by ?? clinic.Acting(_manager, _salon),
            s => s.SaveAsync(Guid.CreateVersion7(), new Slice.Input(row.CheckId, enter, "Closed every year"), Cancel)
        );

    private static Task<Workshop> WorkshopAsync(TestClinic clinic) =>
        clinic.ReadAsync(db => db.Workshops.AsNoTracking().Include(w => w.Closures).SingleAsync(w => w.Name == "Workshop North", Cancel));

    private Task<double> P90Async(TestClinic clinic) =>
        clinic.ReadAsync(async db =>
        {
            var lead = await db.StoredLeads.SingleAsync(l => l.UnitKindId == _kind.Id, Cancel);
            return lead.Arrived.Order().ElementAt(lead.Arrived.Length * 9 / 10);
        });

    private static async Task RunAsync(TestClinic clinic)
    {
        clinic.Clock.AdvanceSeconds(1);
        await clinic.ReadAsync(db => RecalculationQueue.RequestAsync(db, null, clinic.Clock.GetCurrentInstant(), Cancel));
        await clinic.UseAsync<RecalculationRunner, bool>(clinic.Job, r => r.RunAsync(Cancel));
    }
}
