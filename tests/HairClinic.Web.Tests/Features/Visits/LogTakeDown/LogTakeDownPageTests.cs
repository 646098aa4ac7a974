using Bunit;
using HairClinic.Domain.Clients;
using Microsoft.EntityFrameworkCore;
using Chair = HairClinic.Web.Tests.Features.Visits.ChairPage<HairClinic.Web.Features.Visits.AtTheChairPage>;
using Page = HairClinic.Web.Tests.Features.Visits.ChairPage<HairClinic.Web.Features.Visits.LogTakeDownPage>;
using Rebond = HairClinic.Web.Tests.Features.Visits.ChairPage<HairClinic.Web.Features.Visits.LogRebondPage>;

namespace HairClinic.Web.Tests.Features.Visits.LogTakeDown;

public sealed class LogTakeDownPageTests(PgServer server)
{
    private readonly ChairScene _scene = new();

    // With the tap on At the chair that opens it, four.
    [Fact]
    public async Task When_all_is_normal_it_is_logged_in_three_taps_and_says_how_long_it_held() =>
        await OnPageAsync(
            async (page, clinic) =>
            {
                await page.Open(_scene.Visit.Id).ShowsAsync("Take-down");

                page.Choose("Why did it come off?", "A rest without hair");
                page.Choose("Was an edge up", "No, sound");
                page.Send();

                await page.ShowsAsync("The bond held at least 29 days.");
                Assert.Equal(3, page.Taps);
                Assert.True(page.Has("nothing falls due"));
                Assert.True(page.Has("The unit is to be cleaned before it goes on a head again."));
                Assert.False(page.Has("A reaction"));
                Assert.Equal(0, await clinic.ReadAsync(db => db.Bonds.CountAsync(b => b.RemovedOn == null, Cancellation)));
            }
        );

    [Fact]
    public async Task What_must_be_asked_is_asked_before_anything_is_saved() =>
        await OnPageAsync(
            async (page, clinic) =>
            {
                await page.Open(_scene.Visit.Id).ShowsAsync("Take-down");

                page.Send();

                await page.ShowsAsync("Say why it came off.");
                Assert.True(page.Has("Say whether an edge was up when the client came."));
                Assert.Equal(1, await clinic.ReadAsync(db => db.Bonds.CountAsync(b => b.RemovedOn == null, Cancellation)));
            }
        );

    [Fact]
    public async Task Lost_at_home_asks_for_the_day_and_for_no_grades() =>
        await OnPageAsync(
            async (page, _) =>
            {
                await page.Open(_scene.Visit.Id).ShowsAsync("Shedding");

                page.Choose("Why did it come off?", "Came off at home, lost");
                await page.ShowsAsync("The unit is marked as lost when you save.");
                Assert.False(page.Has("Was an edge up"));
                Assert.False(page.Has("Shedding"));
                page.Send();
                await page.ShowsAsync("Ask since when it has been off, or say that it is not known.");
                page.Choose("Since when has it been off?", "Today");
                page.Send();

                await page.ShowsAsync("The bond held 29 days.");
                Assert.True(page.Has("The unit is marked as lost."));
                Assert.False(page.Has("to be cleaned"));
            }
        );

    [Fact]
    public async Task Brought_in_asks_for_the_day_and_the_grades_and_an_unknown_day_is_an_interval() =>
        await OnPageAsync(
            async (page, _) =>
            {
                await page.Open(_scene.Visit.Id).ShowsAsync("Take-down");

                page.Choose("Why did it come off?", "Came off at home, brought in");
                await page.ShowsAsync("Since when has it been off?");
                Assert.True(page.Has("Shedding"));
                page.Choose("Since when has it been off?", "Don’t know");
                page.Send();

                await page.ShowsAsync("The bond held between 0 and 29 days.");
            }
        );

    [Fact]
    public async Task After_a_reaction_the_stylist_is_told_what_to_do_and_where() =>
        await OnPageAsync(
            async (page, _) =>
            {
                await page.Open(_scene.Visit.Id).ShowsAsync("Take-down");
                page.Choose("Why did it come off?", "Skin reaction");
                page.Choose("Was an edge up", "No, sound");
                page.Send();

                await page.ShowsAsync("Trouble breathing or a swollen face is an emergency.");
                Assert.True(page.Has($"/clients/{_scene.Client.Id}/photos"));
                Assert.True(page.Has($"/clients/{_scene.Client.Id}/health-answers"));
            }
        );

    [Fact]
    public async Task The_reasons_that_end_with_the_take_down_are_offered_here_and_only_here()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        await Page.AsAsync(
            clinic,
            _scene.Stylist,
            _scene.Salon,
            async page =>
            {
                await page.Open(_scene.Visit.Id).ShowsAsync("Operation or scan");
                Assert.False(page.Has("It was due"));
                Assert.False(page.Has("Taken back"));
            }
        );
        await Rebond.AsAsync(
            clinic,
            _scene.Stylist,
            _scene.Salon,
            async page =>
            {
                await page.Open(_scene.Visit.Id).ShowsAsync("It was due");
                Assert.False(page.Has("Operation or scan"));
                Assert.False(page.Has("A rest without hair"));
                Assert.Contains(page.Page.FindAll("a.button"), a => a.GetAttribute("href") == $"/visits/{_scene.Visit.Id}/log-take-down");
            }
        );
    }

    [Fact]
    public async Task Where_bonding_is_blocked_taking_it_down_only_is_offered_first()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                _scene.Lay(scene);
                var answer = Guid.CreateVersion7();
                scene.Db.Clearances.Add(
                    new Clearance(
                        Guid.CreateVersion7(),
                        _scene.Client.Id,
                        answer,
                        new ClearanceSpec(null, null, ChairScene.Today.PlusDays(-1), null, ClearanceSeverity.Block)
                    )
                );
            }
        );

        await Rebond.AsAsync(
            clinic,
            _scene.Stylist,
            _scene.Salon,
            async page =>
            {
                await page.Open(_scene.Visit.Id).ShowsAsync("Bonding is blocked for this client.");
                Assert.Equal($"/visits/{_scene.Visit.Id}/log-take-down", page.Find(".primary").GetAttribute("href"));
                Assert.Single(page.Page.FindAll(".primary"));
            }
        );
    }

    [Fact]
    public async Task The_chair_leads_here_while_a_bond_is_on_the_head()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        await clinic.LayAsync(later => later.Db.Visits.Single(v => v.Id == _scene.Visit.Id).Begin(ChairScene.Today));

        await Chair.AsAsync(
            clinic,
            _scene.Stylist,
            _scene.Salon,
            async page =>
            {
                await page.Open().ShowsAsync("Take down only");
                Assert.True(page.Has($"/visits/{_scene.Visit.Id}/log-take-down"));
            }
        );
    }

    private static CancellationToken Cancellation => Xunit.TestContext.Current.CancellationToken;

    private async Task OnPageAsync(Func<Page, TestClinic, Task> act)
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        await Page.AsAsync(clinic, _scene.Stylist, _scene.Salon, page => act(page, clinic));
    }
}
