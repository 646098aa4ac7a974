using Bunit;
using HairClinic.Domain.Bonding;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using Microsoft.AspNetCore.Components;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Page = HairClinic.Web.Tests.Features.Visits.ChairPage<HairClinic.Web.Features.Visits.LogVisitPage>;
using Slice = HairClinic.Web.Features.Visits.LogVisit;

namespace HairClinic.Web.Tests.Features.Visits.LogVisit;

public sealed class LogVisitTests(PgServer server)
{
    [Fact]
    public async Task A_wash_with_every_edge_down_is_two_taps_and_moves_the_last_sound_day()
    {
        var scene = new ChairScene { Purpose = ServicePurpose.WashAndStyle };
        await using var clinic = await TestClinic.OpenAsync(server, scene.Lay);
        await Page.AsAsync(
            clinic,
            scene.Stylist,
            scene.Salon,
            async page =>
            {
                await page.Open(scene.Visit.Id).ShowsAsync("Is an edge up?");
                page.Choose("Is an edge up?", "No, sound");
                page.Send();
                await page.ShowsAsync("Rebond due");
                Assert.Equal(2, page.Taps);
            }
        );

        Assert.Equal(ChairScene.Today, (await BondAsync(clinic)).LastSoundOn);
        Assert.Equal(VisitState.Done, await clinic.ReadAsync(db => db.Visits.Select(v => v.State).SingleAsync(Cancellation)));
    }

    [Fact]
    public async Task A_lift_fixed_at_the_chair_ends_the_hold_and_leaves_the_bond_on()
    {
        var scene = new ChairScene { Purpose = ServicePurpose.FixLift };
        await using var clinic = await TestClinic.OpenAsync(server, scene.Lay);
        await Page.AsAsync(
            clinic,
            scene.Stylist,
            scene.Salon,
            async page =>
            {
                await page.Open(scene.Visit.Id).ShowsAsync("Was it put down again?");
                page.Choose("Since when has it been up?", "Today");
                page.Choose("Where?", "Nape");
                page.Send();
                await page.ShowsAsync("Logged.");
                Assert.Equal(3, page.Taps);
            }
        );

        var bond = await BondAsync(clinic);
        Assert.Equal(new Lift(ChairScene.Today, ChairScene.Today, LiftZone.Nape, SpotFixed: true), bond.Lift);
        Assert.True(bond.IsOpen);
    }

    [Fact]
    public async Task A_consultation_is_finished_with_one_tap()
    {
        var scene = new ChairScene { Purpose = ServicePurpose.Consultation, Bonded = false };
        await using var clinic = await TestClinic.OpenAsync(server, scene.Lay);
        await Page.AsAsync(
            clinic,
            scene.Stylist,
            scene.Salon,
            async page =>
            {
                await page.Open(scene.Visit.Id).ShowsAsync("Save the visit");
                page.Send();
                await page.ShowsAsync("Logged.");
            }
        );
    }

    [Fact]
    public async Task A_rebond_is_logged_on_its_own_form()
    {
        var scene = new ChairScene();
        await using var clinic = await TestClinic.OpenAsync(server, scene.Lay);
        await Page.AsAsync(
            clinic,
            scene.Stylist,
            scene.Salon,
            async page =>
            {
                page.Open(scene.Visit.Id);
                var navigation = page.Services.GetRequiredService<NavigationManager>();
                await page.Page.WaitForAssertionAsync(
                    () => Assert.EndsWith($"/visits/{scene.Visit.Id}/log-rebond", navigation.Uri, StringComparison.Ordinal),
                    TimeSpan.FromSeconds(20)
                );
            }
        );
    }

    [Fact]
    public async Task The_same_tap_sent_four_times_at_once_logs_once_in_few_round_trips()
    {
        var scene = new ChairScene { Purpose = ServicePurpose.WashAndStyle };
        await using var clinic = await TestClinic.OpenAsync(server, scene.Lay);
        var screen = await clinic.UseAsync<Slice, Slice.Screen?>(Stylist(clinic, scene), s => s.OpenAsync(scene.Visit.Id, Cancellation));
        Assert.InRange(clinic.Commands.All.Count, 1, 6);
        var (key, input) = (Guid.CreateVersion7(), screen!.Start with { EdgeUp = false });

        var answers = await Task.WhenAll(
            Enumerable
                .Range(0, 4)
                .Select(_ => clinic.UseAsync<Slice, Slice.Outcome>(Stylist(clinic, scene), s => s.SaveAsync(key, input, Cancellation)))
        );

        Assert.Single(answers.Distinct());
        Assert.Equal(1, await clinic.ReadAsync(db => db.VisitRecords.CountAsync(Cancellation)));
    }

    [Fact]
    public async Task A_visit_logged_by_another_is_refused_in_a_sentence()
    {
        var scene = new ChairScene { Purpose = ServicePurpose.Measuring };
        await using var clinic = await TestClinic.OpenAsync(server, scene.Lay);
        var screen = await clinic.UseAsync<Slice, Slice.Screen?>(Stylist(clinic, scene), s => s.OpenAsync(scene.Visit.Id, Cancellation));
        Task<Slice.Outcome> Save() =>
            clinic.UseAsync<Slice, Slice.Outcome>(
                Stylist(clinic, scene),
                s => s.SaveAsync(Guid.CreateVersion7(), screen!.Start, Cancellation)
            );
        clinic.Commands.Clear();
        await Save();
        Assert.InRange(clinic.Commands.All.Count, 1, 6);

        Assert.Equal("This visit is logged already.", (await Assert.ThrowsAsync<Refusal>(Save)).Message);
    }

    private static CancellationToken Cancellation => Xunit.TestContext.Current.CancellationToken;

    private static HairClinic.Web.Fence.PersonActor Stylist(TestClinic clinic, ChairScene scene) =>
        clinic.Acting(scene.Stylist, scene.Salon);

    private static Task<Bond> BondAsync(TestClinic clinic) => clinic.ReadAsync(db => db.Bonds.AsNoTracking().SingleAsync(Cancellation));
}
