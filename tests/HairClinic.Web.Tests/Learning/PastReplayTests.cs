using HairClinic.Domain.Replay;
using HairClinic.Web.Learning;
using HairClinic.Web.Tests.Features.Lasting;
using NodaTime;

namespace HairClinic.Web.Tests.Learning;

/// <summary>A practice whose past is known: what the replay says of it, and that nothing later is known on an earlier day.</summary>
public sealed class PastReplayTests(PgServer server)
{
    private readonly LatePractice _practice = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_bond_unit_and_order_is_counted_and_by_the_programs_days_nobody_waits()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _practice.Lay);

        var result = PastReplay.Run(await RecordsAsync(clinic, LatePractice.Today), Cancel);

        Assert.Equal((23, 1), (result.Refits, result.MonthsBetween));
        Assert.Equal((_practice.Bonds, _practice.Lifts), (result.Bonds.Count, result.Bonds.Ended));
        Assert.Equal((_practice.UnitsSeen, _practice.UnitsEnded), (result.Units.Count, result.Units.Ended));
        // Units last as the practice's row has it.
        Assert.InRange(result.Units.ShareInside, 0.9, 1);
        Assert.Equal(
            (LatePractice.Clients, LatePractice.Clients, _practice.DaysWithout),
            (result.Gaps!.Clients, result.Gaps.PeopleWithout, result.Gaps.DaysWithout)
        );
        Assert.Equal((0, 0), (result.Gaps.PeopleWithoutReplayed, result.Gaps.DaysWithoutReplayed));
        // Ordered fifty days before the end, with seventy to wait: each was said to be beyond the 5 % that are accepted, and each came.
        Assert.All(result.Chances, bin => Assert.True(bin.From >= 0.05 && bin.Came == bin.Count));
        Assert.Equal(_practice.UnitsEnded, result.Chances.Sum(b => b.Count) + result.OrdersLeftOut);
        Assert.Equal(_practice.UnitsEnded, result.Gaps.Ordered);
    }

    [Fact]
    public async Task What_is_written_down_later_changes_nothing_that_was_predicted_before()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _practice.Lay);
        var before = await SayAsync(clinic, LatePractice.Today, LatePractice.Today);
        await clinic.ReadAsync(db => _practice.GoOnAsync(db, Cancel));

        var after = await SayAsync(clinic, LatePractice.Today.PlusDays(60), LatePractice.Today);

        Assert.True(before.Count > _practice.Lifts);
        Assert.All(
            before,
            said =>
            {
                Assert.Equal(said.Value.Item1, after[said.Key].Item1, 1e-9);
                Assert.Equal(said.Value.Item2, after[said.Key].Item2, 1e-9);
            }
        );
    }

    [Fact]
    public async Task A_practice_in_which_little_has_ended_is_told_nothing()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _practice.LayBarely);

        var result = PastReplay.Run(await RecordsAsync(clinic, LatePractice.Today), Cancel);

        Assert.Equal((0, false, false), (result.Refits, result.Bonds.CanTell, result.Units.CanTell));
        Assert.Null(result.Gaps);
    }

    // Of what had ended by a day, where its end lies in what was said; and the chances said of orders.
    private static async Task<Dictionary<string, (double, double)>> SayAsync(TestClinic clinic, LocalDate today, LocalDate ended)
    {
        var records = await RecordsAsync(clinic, today);
        var known = PastReplay.Learn(records, RefitSchedule.Days(records.FirstDay, today), Cancel);
        var bands = new PastBands(records, known);
        var over = records.Spells.Where(s => s.EndedOn <= ended).Select(s => s.BondId).ToHashSet();
        var said = bands.Bonds().Where(b => over.Contains(b.Id)).ToDictionary(b => $"bond {b.Id}", b => (b.Outcome.Lower, b.Outcome.Upper));
        foreach (var (id, outcome) in bands.Units().Where(u => !u.Outcome.IsOpen && records.UnitsById[u.Id].Dates.RetiredOn <= ended))
            said[$"unit {id}"] = (outcome.Lower, outcome.Upper);
        var orders = new PastOrders(records, records.LookedAt, known, day => ReorderFacts.FromPast(records, day));
        foreach (var order in orders.Chances(Cancel).Where(o => o.Day <= ended.PlusDays(-ChanceBins.SettledAfterDays)))
            said[$"order {order.ClientId} {order.Day}"] = (order.Said, order.Came ? 1 : 0);
        return said;
    }

    private static Task<PastRecords> RecordsAsync(TestClinic clinic, LocalDate today) =>
        clinic.ReadAsync(db => PastRecords.LoadAsync(db, today, Cancel));
}
