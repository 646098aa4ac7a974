using Bunit;
using HairClinic.Domain.Bonding;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Features.Lasting;
using HairClinic.Web.Learning;
using HairClinic.Web.Tests.Ui;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Lasting.WhatLasts;

namespace HairClinic.Web.Tests.Features.Lasting.WhatLasts;

/// <summary>Expected values: km_tables.csv and logrank.csv beside the engine's own tests (their first lines name the source), weeks as days.</summary>
public sealed class HoldTests(PgServer server) : UiTestContext
{
    private Person _owner = null!;
    private Person _manager = null!;
    private Salon _here = null!;
    private Salon _there = null!;

    private static CancellationToken Cancel => Xunit.TestContext.Current.CancellationToken;

    [Fact]
    public async Task Published_times_laid_as_bonds_give_the_published_medians_and_chi_square()
    {
        await using var clinic = await OpenAsync(scene => PublishedBonds.Lay(scene, _here));

        var screen = await OpenAsync(clinic, LastingSide.Adhesive);

        var drug = screen.Groups.Single(g => g.Name == PublishedBonds.Drug);
        var control = screen.Groups.Single(g => g.Name == PublishedBonds.Control);
        Assert.Equal((21, 9, 12, 161.0), (drug.Spells, drug.Ended, drug.Censored, drug.Curve.Median));
        Assert.Equal((21, 21, 0, 56.0), (control.Spells, control.Ended, control.Censored, control.Curve.Median));
        Assert.Equal(0.8571428571, drug.Curve.At(6 * 7)!.Value.Share, 1e-9);
        Assert.Equal(0.4481792717, drug.Curve.At(23 * 7)!.Value.Share, 1e-9);
        Assert.False(screen.Compared!.InModel);
        Assert.Equal(16.79294099, screen.Compared.ChiSquare, 1e-7);
        Assert.Equal(4.168809109e-05, screen.Compared.P, 1e-12);
    }

    [Fact]
    public async Task The_page_says_the_numbers_and_that_nine_ends_are_too_few_to_tell()
    {
        await using var clinic = await OpenAsync(scene => PublishedBonds.Lay(scene, _here));
        var screen = await OpenAsync(clinic, LastingSide.Adhesive);

        var page = Render<Web.Features.Lasting.LastingGroups>(p => p.Add(g => g.Screen, screen));

        Assert.Contains("χ² = 16.793", page.Markup, StringComparison.Ordinal);
        var half = page.FindAll("table")[0].QuerySelectorAll("tbody tr").ToDictionary(r => r.Children[0].TextContent, r => r.Children[4]);
        Assert.StartsWith("can’t tell yet: 161 (", half[PublishedBonds.Drug].TextContent, StringComparison.Ordinal);
        Assert.Contains("quiet", half[PublishedBonds.Drug].ClassName, StringComparison.Ordinal);
        // 95 % by log(−log): the same curve's limits in weeks are 4 and 11.
        Assert.Equal("56 (28 to 77)", half[PublishedBonds.Control].TextContent);
        Assert.StartsWith("Can't tell yet", page.Find("[data-finding]").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Lifts_known_only_to_the_week_are_compared_in_the_model_and_drawn_without_a_band()
    {
        await using var clinic = await OpenAsync(scene => PublishedBonds.Lay(scene, _here, dayKnown: false));

        var screen = await OpenAsync(clinic, LastingSide.Adhesive);

        var control = screen.Groups.Single(g => g.Name == PublishedBonds.Control);
        Assert.Equal((true, true, 49.0, 56.0), (control.Curve.ByIntervals, control.Curve.Settled, control.Curve.Low, control.Curve.High));
        Assert.All(control.Curve.Points, p => Assert.Null(p.Low));
        Assert.True(screen.Compared!.InModel);
        Assert.Equal(1, screen.Compared.Degrees);
        Assert.InRange(screen.Compared.P, 1e-7, 1e-3);
    }

    [Fact]
    public async Task In_the_model_the_sentence_says_how_many_times_as_long_each_against_its_window()
    {
        await using var clinic = await OpenAsync(scene => LayLots(scene, known: false, _here, ("A", "1", 38), ("B", "2", 31)));
        var screen = await OpenAsync(clinic, LastingSide.Adhesive);

        var page = Render<Web.Features.Lasting.LastingGroups>(p => p.Add(g => g.Screen, screen));

        Assert.True(screen.Compared!.InModel);
        Assert.Equal(("Adhesive B", "Adhesive A"), (screen.Compared.Sooner!.Name, screen.Compared.Later!.Name));
        Assert.InRange(screen.Compared.TimesAsLong!.Value, 0.75, 0.88);
        Assert.Matches(
            @"^Each against its own window, Adhesive B lifts sooner than Adhesive A: 0\.\d\d times as long\. As seen, half by day 2\d(\.5)? against day 3\d(\.5)?\. ",
            page.Find("[data-finding]").TextContent
        );
    }

    [Fact]
    public async Task Two_adhesives_of_which_enough_lifted_are_told_apart_in_one_sentence()
    {
        await using var clinic = await OpenAsync(scene => LayLots(scene, ("A", "1", 38), ("B", "2", 31)));
        var screen = await OpenAsync(clinic, LastingSide.Adhesive);

        var page = Render<Web.Features.Lasting.LastingGroups>(p => p.Add(g => g.Screen, screen));

        Assert.Equal(
            "Adhesive B lifts sooner than Adhesive A: half by day 31 against day 38. That this is chance is unlikely (p\u00a0<\u00a00.001).",
            page.Find("[data-finding]").TextContent
        );
    }

    [Fact]
    public async Task A_bad_lot_shows_among_the_lots_of_its_adhesive()
    {
        await using var clinic = await OpenAsync(scene => LayLots(scene, ("A", "good", 38), ("A", "bad", 20)));

        var screen = await OpenAsync(clinic, LastingSide.Lot);

        Assert.Equal(
            [("Adhesive A, bad", 20.0), ("Adhesive A, good", 38.0)],
            screen.Groups.Select(g => (g.Name!, g.Curve.Median!.Value)).Order()
        );
        Assert.Equal("Adhesive A, bad", screen.Compared!.Sooner!.Name);
        Assert.True(screen.Compared.P < 0.001);
    }

    [Fact]
    public async Task A_manager_counts_the_salons_they_work_in_and_an_owner_all()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            LayLots(scene, ("A", "1", 38));
            LayLots(scene, known: true, _there, ("B", "2", 31));
        });

        var all = await OpenAsync(clinic, LastingSide.Salon);
        var own = await clinic.UseAsync<Slice, Slice.Screen>(
            clinic.Acting(_manager, _here),
            s => s.OpenAsync(new(LastingSubject.Hold, LastingSide.Salon), Cancel)
        );

        Assert.Equal(["Canal Side", "Elm Row"], all.Groups.Select(g => g.Name).Order());
        Assert.Equal("Elm Row", Assert.Single(own.Groups).Name);
    }

    [Fact]
    public async Task The_stored_fit_stands_beside_with_what_it_rests_on()
    {
        await using var clinic = await OpenAsync(scene => LayLots(scene, ("A", "1", 38), ("B", "2", 31)));
        await StoreFitAsync(clinic);

        var fit = (await OpenAsync(clinic, LastingSide.Adhesive)).Fit;

        Assert.Equal((24, 24, 24, true), (fit.Spells, fit.Ended, fit.Clients, fit.Converged));
        Assert.Equal(["Adhesive B", "Adhesive A"], fit.Effects.Select(e => e.Name));
        Assert.All(fit.Effects, e => Assert.True(e.Low < e.Factor && e.Factor < e.High));
        // One standard error of ln on each side is 1/1.28 of the band's reach.
        Assert.All(fit.Effects, e => Assert.Equal(e.Factor * e.Factor, e.Low * e.High, 1e-9));
    }

    [Fact]
    public async Task With_no_bond_nothing_is_drawn_and_the_page_says_what_comes()
    {
        await using var clinic = await OpenAsync(_ => { });
        var screen = await OpenAsync(clinic, LastingSide.Adhesive);

        var page = Render<Web.Features.Lasting.LastingGroups>(p => p.Add(g => g.Screen, screen));

        Assert.Contains("No bond has been watched", page.Markup, StringComparison.Ordinal);
        Assert.Equal(LifetimeFitSummary.None, screen.Fit);
    }

    [Fact]
    public async Task However_many_bonds_there_are_they_are_read_in_the_same_few_queries()
    {
        await using var clinic = await OpenAsync(scene => PublishedBonds.Lay(scene, _here));

        await OpenAsync(clinic, LastingSide.Adhesive);

        Assert.InRange(clinic.Commands.All.Count, 1, 16);
    }

    private Task<Slice.Screen> OpenAsync(TestClinic clinic, LastingSide by) =>
        clinic.UseAsync<Slice, Slice.Screen>(clinic.Acting(_owner, _here, _there), s => s.OpenAsync(new(LastingSubject.Hold, by), Cancel));

    private Task<TestClinic> OpenAsync(Action<Scene> lay) =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("North");
                _here = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 1);
                _there = scene.OpenSalon("Canal Side", "Europe/London", "GBP", 1);
                _owner = scene.Hire("Ottilie Vane", StaffRole.Owner, _here);
                _manager = scene.Hire("Mabel Root", StaffRole.Manager, _here);
                lay(scene);
            }
        );

    private void LayLots(Scene scene, params (string Adhesive, string Lot, int Days)[] lots) => LayLots(scene, known: true, _here, lots);

    /// <summary>Of each lot twelve bonds, which lifted in pairs around that day.</summary>
    private static void LayLots(Scene scene, bool known, Salon salon, params (string Adhesive, string Lot, int Days)[] lots)
    {
        var kind = scene.Kinds.FirstOrDefault() ?? scene.AddUnitKind("Lace front", "French lace", "Harbour workroom");
        foreach (var (name, lot, days) in lots)
        {
            var adhesive =
                scene.Products.Find(p => p.Name == $"Adhesive {name}")
                ?? scene.AddProduct($"Adhesive {name}", ProductKind.Adhesive, "acrylic");
            var lotId = adhesive.ReceiveLot(Guid.CreateVersion7(), lot, expiresOn: null).Id;
            for (var i = 0; i < 12; i++)
            {
                var off = salon.DayOf(scene.Now).PlusDays(-2);
                var held =
                    days
                    + (
                        i < 4 ? -2
                        : i < 8 ? 0
                        : 2
                    );
                var client = scene.AddClient($"{name}{lot}{i}", "Person", salon);
                var unit = scene.AddUnit(client, kind, off.PlusDays(-held - 1));
                var bond = scene.AddBond(client, unit, off.PlusDays(-held), adhesive);
                bond.SetProducts([(Guid.CreateVersion7(), new AppliedProduct(adhesive.Id, lotId, 3))], waitsKept: true);
                if (!known)
                    bond.MarkSeenSound(off.PlusDays(-4));
                bond.ReportLift(new Lift(off, known ? off : null, Zone: null, SpotFixed: false));
                bond.Remove(off, RemovalReason.Lifted);
                unit.TakeOff();
            }
        }
    }

    private Task<int> StoreFitAsync(TestClinic clinic) =>
        clinic.ReadAsync(async db =>
        {
            var today = _here.DayOf(clinic.Clock.GetCurrentInstant());
            var holds = await HoldFacts.LoadAsync(
                db,
                await EntityFrameworkQueryableExtensions.ToListAsync(db.HoldWindowRules, Cancel),
                clientIds: null,
                Cancel
            );
            List<HoldSpell> spells = [.. holds.AllSpells(today)];
            var now = clinic.Clock.GetCurrentInstant();
            db.StoredFits.Add(WearModelFitter.FitHolds(spells, new Dictionary<KnownCovariate, double>(), today, now));
            return await db.SaveChangesAsync(Cancel);
        });
}
