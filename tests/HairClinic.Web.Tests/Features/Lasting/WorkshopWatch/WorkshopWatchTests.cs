using Bunit;
using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Wear.Watch;
using HairClinic.Web.Features.Lasting;
using HairClinic.Web.Tests.Ui;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Lasting.WorkshopWatch;

namespace HairClinic.Web.Tests.Features.Lasting.WorkshopWatch;

public sealed class WorkshopWatchTests(PgServer server) : UiTestContext
{
    private readonly DecliningWorkshop _practice = new();

    private static CancellationToken Cancel => Xunit.TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_night_names_the_workshop_that_got_worse_and_from_which_delivery_on()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _practice.Lay);

        await DecliningWorkshop.RecalculateAsync(clinic);

        var alarm = await clinic.ReadAsync(db => db.WatchAlarms.SingleAsync(Cancel));
        Assert.Equal((WatchedStreamKind.Workshop, _practice.Harbour.WorkshopId), (alarm.Kind, alarm.StreamId));
        Assert.InRange(alarm.CohortFrom, DecliningWorkshop.WorseFrom.PlusDays(-12), DecliningWorkshop.WorseFrom.PlusDays(12));
        Assert.Equal(DecliningWorkshop.Today, alarm.RaisedOn);
        Assert.True(alarm.Statistic > alarm.Limit);

        // The night after it stands as it was, and so does its picture.
        clinic.Clock.AdvanceDays(1);
        await DecliningWorkshop.RecalculateAsync(clinic);

        Assert.Equal(alarm.Id, (await clinic.ReadAsync(db => db.WatchAlarms.SingleAsync(Cancel))).Id);
        var watches = await clinic.ReadAsync(db => db.StoredWatches.ToListAsync(Cancel));
        Assert.Equal(DecliningWorkshop.Today, watches.Single(w => w.StreamId == alarm.StreamId).DataCut);
        Assert.All(
            watches.Where(w => w.StreamId != alarm.StreamId),
            watch => Assert.Equal(DecliningWorkshop.Today.PlusDays(1), watch.DataCut)
        );
        Assert.Equal(
            [WatchedStreamKind.Workshop, WatchedStreamKind.Adhesive, WatchedStreamKind.Lot],
            watches.Select(w => w.Kind).Distinct().Order()
        );
    }

    [Fact]
    public async Task The_page_says_what_was_found_and_whom_it_concerns()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _practice.Lay);
        await DecliningWorkshop.RecalculateAsync(clinic);
        clinic.Commands.Clear();

        var screen = await OpenAsync(clinic);

        Assert.InRange(clinic.Commands.All.Count, 1, 9);
        var found = Assert.Single(screen.Open);
        Assert.Equal("Harbour workroom", found.Name);
        Assert.NotEmpty(found.Clients);
        Assert.All(found.Clients, client => Assert.True(client.On >= found.Alarm.CohortFrom && client.Code[0] == 'h'));
        Assert.Equal(2, screen.Watches.Count(w => w.Watch.Kind == WatchedStreamKind.Workshop));
        var chart = Render<WatchChart>(p => p.Add(c => c.Row, screen.Watches.Single(w => w.Name == "Harbour workroom")));
        Assert.Contains("Above the limit", chart.Find("svg").GetAttribute("aria-label"), StringComparison.Ordinal);
        var calm = Render<WatchChart>(p => p.Add(c => c.Row, screen.Watches.Single(w => w.Name == "Quarry workroom")));
        Assert.StartsWith("Below the limit", calm.Find("p").TextContent, StringComparison.Ordinal);
        Assert.Empty(calm.FindAll("svg"));
    }

    [Fact]
    public async Task A_cohort_of_which_nothing_is_left_closes_by_itself()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _practice.Lay);
        await DecliningWorkshop.RecalculateAsync(clinic);
        await clinic.ReadAsync(async db =>
        {
            var worn = await db
                .HairSystems.Where(u => u.UnitKindId == _practice.Harbour.Id && u.State == UnitState.Bonded)
                .Join(db.Bonds.Where(b => b.RemovedOn == null), u => u.Id, b => b.HairSystemId, (u, b) => new { Unit = u, Bond = b })
                .ToListAsync(Cancel);
            foreach (var on in worn)
            {
                on.Bond.Remove(DecliningWorkshop.Today, RemovalReason.Scheduled);
                on.Unit.TakeOff();
                on.Unit.LeaveService(UnitState.Damaged, DecliningWorkshop.Today, "torn");
            }
            return await db.SaveChangesAsync(Cancel);
        });

        await DecliningWorkshop.RecalculateAsync(clinic);

        Assert.Equal(WatchAlarmEnd.UsedUp, (await clinic.ReadAsync(db => db.WatchAlarms.SingleAsync(Cancel))).End);
    }

    private Task<Slice.Screen> OpenAsync(TestClinic clinic) =>
        clinic.UseAsync<Slice, Slice.Screen>(clinic.Acting(_practice.Owner, _practice.Salon), s => s.OpenAsync(Cancel));
}
