using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Features.Lasting;
using HairClinic.Web.Features.Outlook;
using HairClinic.Web.Learning;
using HairClinic.Web.Workers;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Tests.Workers;

/// <summary>What pages show of the whole book is that of the last night's run, for each of those who may look.</summary>
public sealed class PageResultRefresherTests(PgServer server)
{
    private static readonly LocalDate Today = new(2027, 2, 3);
    private static readonly LastingQuery LifeByBase = new(LastingSubject.Life, LastingSide.Base);
    private Salon _elmRow = null!;
    private Salon _quayside = null!;
    private Person _owner = null!;
    private Person _manager = null!;
    private Person _newcomer = null!;
    private Product _adhesive = null!;
    private UnitKind _kind = null!;
    private Client _far = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Until_the_next_night_the_pages_show_what_the_last_one_kept()
    {
        await using var clinic = await OpenAsync();
        await NightAsync(clinic);
        var (before, gaps) = (await LastingAsync(clinic, _owner), await GapsAsync(clinic, _owner));
        await clinic.ReadAsync(db => db.Bonds.Where(b => b.ClientId == _far.Id).ExecuteDeleteAsync(Cancel));

        var (shown, shownGaps) = (await LastingAsync(clinic, _owner), await GapsAsync(clinic, _owner));
        await NightAsync(clinic);
        var (after, gapsAfter) = (await LastingAsync(clinic, _owner), await GapsAsync(clinic, _owner));

        Assert.Equal((2, 2, 1), (Units(before), Units(shown), Units(after)));
        Assert.Equal(["far", "near"], gaps.Order());
        Assert.Equal(gaps, shownGaps);
        Assert.Equal(["near"], gapsAfter);
    }

    [Fact]
    public async Task What_was_kept_reads_back_as_it_was_worked_out()
    {
        await using var clinic = await OpenAsync();
        var fresh = await LastingAsync(clinic, _owner);
        Assert.Equal(0, await clinic.ReadAsync(db => db.StoredPageResults.CountAsync(Cancel)));
        await clinic.UseAsync<PageResultRefresher, bool>(
            clinic.Job,
            async pages =>
            {
                await pages.RunAsync(Cancel);
                return true;
            }
        );

        var kept = await LastingAsync(clinic, _owner);

        Assert.Equal(fresh.Today, kept.Today);
        Assert.Equal(fresh.Days, kept.Days);
        Assert.Equal(
            fresh.Groups.Select(g => (g.Id, g.Name, g.Spells, g.Ended, g.Curve.Median, g.Curve.LastDay)),
            kept.Groups.Select(g => (g.Id, g.Name, g.Spells, g.Ended, g.Curve.Median, g.Curve.LastDay))
        );
        Assert.Equal(fresh.Groups.SelectMany(g => g.Curve.Points), kept.Groups.SelectMany(g => g.Curve.Points));
        Assert.Equal(fresh.Compared, kept.Compared);
    }

    [Fact]
    public async Task A_manager_is_shown_their_salons_clients_and_the_owner_all()
    {
        await using var clinic = await OpenAsync();
        await NightAsync(clinic);

        Assert.Equal((2, 1), (Units(await LastingAsync(clinic, _owner)), Units(await LastingAsync(clinic, _manager))));
        Assert.Equal(["near"], await GapsAsync(clinic, _manager));
        // Nine questions on what lasts and one on what is ahead, of the owner and of the manager.
        Assert.Equal(20, await clinic.ReadAsync(db => db.StoredPageResults.CountAsync(Cancel)));
    }

    [Fact]
    public async Task A_manager_who_works_nowhere_yet_is_shown_nothing_and_nothing_is_kept_of_it()
    {
        await using var clinic = await OpenAsync();
        await NightAsync(clinic);

        Assert.Equal(0, Units(await LastingAsync(clinic, _newcomer)));
        Assert.Empty(await GapsAsync(clinic, _newcomer));
        Assert.Equal(20, await clinic.ReadAsync(db => db.StoredPageResults.CountAsync(Cancel)));
    }

    [Fact]
    public async Task Whoever_is_let_go_of_is_named_no_more_and_no_name_is_kept()
    {
        await using var clinic = await OpenAsync();
        await NightAsync(clinic);
        await clinic.ReadAsync(async db =>
        {
            (await db.Clients.SingleAsync(c => c.Code == "near", Cancel)).MoveTo(_quayside.Id);
            return await db.SaveChangesAsync(Cancel);
        });

        Assert.Empty(await GapsAsync(clinic, _manager));
        var kept = await clinic.ReadAsync(db => db.StoredPageResults.Select(a => a.Answer).ToListAsync(Cancel));
        Assert.DoesNotContain(kept, answer => answer.Contains("Una", StringComparison.Ordinal));
    }

    private Task<TestClinic> OpenAsync() =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("North");
                (_elmRow, _quayside) = (
                    scene.OpenSalon("Elm Row", "Europe/London", "GBP", 2),
                    scene.OpenSalon("Quayside", "Europe/London", "GBP", 1)
                );
                _owner = scene.Hire("Ola Test", StaffRole.Owner, _elmRow, _quayside);
                _manager = scene.Hire("Mara Test", StaffRole.Manager, _elmRow);
                _newcomer = scene.Hire("Nia Test", StaffRole.Manager);
                _adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "acrylic", "A1");
                _kind = scene.AddUnitKind("Everyday", "Silk top", "Workshop North");
                Wearing(scene, "near", _elmRow);
                _far = Wearing(scene, "far", _quayside);
            }
        );

    // One unit worn out and put away sixty days ago, the next worn since ten days later.
    private Client Wearing(Scene scene, string code, Salon salon)
    {
        var client = scene.AddClient(code, $"Una {code}", salon);
        var end = Today.PlusDays(-60);
        var first = scene.AddUnit(client, _kind, Today.PlusDays(-200));
        scene.AddBond(client, first, Today.PlusDays(-100), _adhesive).Remove(end, RemovalReason.Scheduled);
        first.TakeOff();
        first.LeaveService(UnitState.Retired, end, "worn out");
        scene.AddBond(client, scene.AddUnit(client, _kind, end.PlusDays(11)), end.PlusDays(11), _adhesive);
        return client;
    }

    private static async Task NightAsync(TestClinic clinic)
    {
        await clinic.ReadAsync(db => RecalculationQueue.RequestAsync(db, null, clinic.Clock.GetCurrentInstant(), Cancel));
        await clinic.UseAsync<RecalculationRunner, bool>(clinic.Job, r => r.RunAsync(Cancel));
    }

    private Task<WhatLasts.Screen> LastingAsync(TestClinic clinic, Person who) =>
        clinic.UseAsync<WhatLasts, WhatLasts.Screen>(Acting(clinic, who), s => s.OpenAsync(LifeByBase, Cancel));

    private async Task<List<string>> GapsAsync(TestClinic clinic, Person who) =>
        [.. (await clinic.UseAsync<Ahead, Ahead.Screen>(Acting(clinic, who), s => s.OpenAsync(Cancel))).Promise.Gaps.Select(g => g.Code)];

    private Web.Fence.PersonActor Acting(TestClinic clinic, Person who) =>
        who == _owner ? clinic.Acting(who, _elmRow, _quayside)
        : who == _newcomer ? clinic.Acting(who)
        : clinic.Acting(who, _elmRow);

    private static int Units(WhatLasts.Screen screen) => screen.Groups.Sum(g => g.Spells);
}
