using Bunit;
using HairClinic.Domain.Bonding;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
using HairClinic.Web.Features.Visits;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Page = HairClinic.Web.Tests.Features.Visits.ChairPage<HairClinic.Web.Features.Visits.LogRebondPage>;
using Slice = HairClinic.Web.Features.Visits.LogRebond;

namespace HairClinic.Web.Tests.Features.Visits.LogRebond;

public sealed class LogRebondPageTests(PgServer server)
{
    private ChairScene _scene = new();

    [Fact]
    public async Task When_all_is_normal_a_rebond_is_logged_in_three_taps_and_the_next_date_is_shown() =>
        await OnPageAsync(
            async (page, clinic) =>
            {
                await page.Open(_scene.Visit.Id).ShowsAsync("Take-down");

                page.Choose("Was an edge up", "No, sound");
                page.Choose("Was each coat left to dry?", "Waits kept");
                page.Send();

                await page.ShowsAsync("Due again");
                Assert.Equal(3, page.Taps);
                var due = await clinic.ReadAsync(db =>
                    db.Bonds.Where(b => b.RemovedOn == null).Select(b => b.DueOn).SingleAsync(Cancellation)
                );
                Assert.Equal($"{due:uuuu-MM-dd}", page.Find(".vast time").GetAttribute("datetime"));
                Assert.Contains(
                    $"/visits/book-visit?client={_scene.Client.Id}&amp;around={due:uuuu-MM-dd}",
                    page.Page.Markup,
                    StringComparison.Ordinal
                );
                Assert.True(page.Has("no water"));
                Assert.NotEmpty(page.Page.FindAll("time[data-countdown]"));
            }
        );

    [Fact]
    public async Task Even_with_a_lift_two_worn_grades_another_lot_and_the_spare_it_takes_at_most_twelve_taps() =>
        await OnPageAsync(
            async (page, _) =>
            {
                await page.Open(_scene.Visit.Id).ShowsAsync("Take-down");

                page.Choose("Was an edge up", "Yes, lifted");
                page.Choose("Since when has it been up?", "Today");
                page.Choose("Where?", "Front");
                page.Choose("Knots", "2");
                page.Choose("Base", "3");
                page.Choose("Unit that goes on", _scene.Spare.Serial);
                page.Choose("Lot of Adhesive A", "A-1");
                page.Choose("Was each coat left to dry?", "Cut short");
                page.Send();

                await page.ShowsAsync("Due again");
                Assert.InRange(page.Taps, 1, 12);
            }
        );

    // The unit was graded at its last take-down: to say that nothing changed is one tap.
    [Fact]
    public async Task With_grades_as_last_time_it_takes_four_taps_and_is_kept_as_a_copy() =>
        await OnPageAsync(
            async (page, clinic) =>
            {
                await LogLastAsync(clinic, new(1, 0, 2, 0, 1, null));
                await page.Open(_scene.Next.Id).ShowsAsync("last: 2");
                Assert.Empty(page.Page.FindAll("input[name=Base][checked]"));

                page.Press("Same as last time");
                page.Choose("Was an edge up", "No, sound");
                page.Choose("Was each coat left to dry?", "Waits kept");
                page.Send();

                await page.ShowsAsync("Due again");
                Assert.Equal(4, page.Taps);
                var record = await RecordAsync(clinic);
                Assert.Equal((new InspectionGrades(1, 0, 2, 0, 1, null), true), (record.Grades, record.GradesCopied));
            }
        );

    [Fact]
    public async Task A_grade_that_is_changed_after_the_copy_makes_it_a_look_and_one_pressed_again_is_blank() =>
        await OnPageAsync(
            async (page, clinic) =>
            {
                await LogLastAsync(clinic, new(1, 0, 2, 0, 1, null));
                await page.Open(_scene.Next.Id).ShowsAsync("last: 2");

                page.Press("Same as last time");
                page.Choose("Shedding", "2");
                page.Find("input[name=Fit][value='0']").Click();
                page.Choose("Was an edge up", "No, sound");
                page.Choose("Was each coat left to dry?", "Waits kept");
                page.Send();

                await page.ShowsAsync("Due again");
                var record = await RecordAsync(clinic);
                Assert.Equal((new InspectionGrades(2, 0, 2, null, 1, null), false), (record.Grades, record.GradesCopied));
            }
        );

    [Fact]
    public async Task Since_when_it_looks_worn_out_is_asked_when_it_is_found_so_for_the_first_time() =>
        await OnPageAsync(
            async (page, clinic) =>
            {
                await LogLastAsync(clinic, new(null, null, 3, null, null, null));
                await page.Open(_scene.Next.Id).ShowsAsync("last: 3");
                page.Choose("Base", "3");
                await page.ShowsAsync("plan its replacement now");
                Assert.False(page.Has("Since when has it looked worn out?"));
            }
        );

    [Fact]
    public async Task And_one_tap_answers_it() =>
        await OnPageAsync(
            async (page, clinic) =>
            {
                await page.Open(_scene.Visit.Id).ShowsAsync("Take-down");
                page.Choose("Knots", "3");
                page.Choose("Since when has it looked worn out?", "About a week ago");
                page.Choose("Was an edge up", "No, sound");
                page.Choose("Was each coat left to dry?", "Waits kept");
                page.Send();

                await page.ShowsAsync("Due again");
                Assert.Equal(SinceWhen.AboutAWeek, (await RecordAsync(clinic)).WornOutSince);
            }
        );

    [Fact]
    public async Task What_must_be_asked_is_asked_before_anything_is_saved() =>
        await OnPageAsync(
            async (page, clinic) =>
            {
                await page.Open(_scene.Visit.Id).ShowsAsync("Take-down");

                page.Send();

                await page.ShowsAsync("Say whether an edge was up when the client came.");
                Assert.True(page.Has("Say whether each coat was left to dry"));
                Assert.Equal(1, await clinic.ReadAsync(db => db.Bonds.CountAsync(Cancellation)));
            }
        );

    [Fact]
    public async Task Cautions_are_on_the_page_and_end_by_deferring() =>
        await OnPageAsync(
            async (page, _) =>
            {
                await page.Open(_scene.Visit.Id).ShowsAsync("No bonding on broken, infected, sunburnt or freshly operated skin.");
                Assert.True(page.Has("ask a physician"));
                Assert.True(page.Has("local codes and licensed practice come before anything here"));
                Assert.Empty(page.Page.FindAll("dialog"));
            }
        );

    [Fact]
    public async Task An_expired_lot_is_shown_with_its_day_and_cannot_be_tapped() =>
        await OnPageAsync(
            async (page, _) =>
            {
                await page.Open(_scene.Visit.Id).ShowsAsync("expired Tue 2 Feb 2027");
                var expired = page.Page.FindAll("label.tap").Single(l => l.TextContent.Contains("A-0", StringComparison.Ordinal));
                Assert.True(expired.QuerySelector("input")!.HasAttribute("disabled"));
            }
        );

    [Fact]
    public async Task An_unfit_unit_asks_for_a_second_yes() =>
        await OnPageAsync(
            async (page, _) =>
            {
                await page.Open(_scene.Visit.Id).ShowsAsync("Take-down");
                page.Choose("Was an edge up", "No, sound");
                page.Choose("Was each coat left to dry?", "Waits kept");
                page.Choose("Base", "4");
                page.Send();
                await page.ShowsAsync("is unfit. Bond the spare, or confirm that this is an emergency.");

                page.Page.FindAll("label.choice input")[^1].Change(true);
                page.Send();

                await page.ShowsAsync("Due again");
                Assert.True(page.Has("plan its replacement now"));
            }
        );

    [Fact]
    public async Task A_reload_keeps_what_was_typed() =>
        await OnPageAsync(
            async (page, clinic) =>
            {
                await page.Open(_scene.Visit.Id).ShowsAsync("Take-down");
                page.Choose("Was an edge up", "Yes, lifted");
                page.Choose("Knots", "2");
                page.Find("textarea").Input("Swam twice this week");

                // The tablet is closed before the pause is over.
                await page.Page.InvokeAsync(() => page.Page.Instance.DisposeAsync().AsTask());
                await OnPageAgainAsync(
                    clinic,
                    async again =>
                    {
                        await again.Open(_scene.Visit.Id).ShowsAsync("What you typed before is here again.");
                        Assert.True(again.Has("Swam twice this week"));
                        Assert.NotNull(again.Find("input[name=FoundLifted][value=true][checked]"));
                        Assert.NotNull(again.Find("input[name=Knots][value='2'][checked]"));
                    }
                );
            }
        );

    [Fact]
    public async Task Whoever_comes_second_is_shown_what_was_logged() =>
        await OnPageAsync(
            async (page, clinic) =>
            {
                await page.Open(_scene.Visit.Id).ShowsAsync("Take-down");
                await OnPageAgainAsync(
                    clinic,
                    async other =>
                    {
                        await other.Open(_scene.Visit.Id).ShowsAsync("Take-down");
                        other.Choose("Was an edge up", "No, sound");
                        other.Choose("Was each coat left to dry?", "Waits kept");
                        other.Send();
                        await other.ShowsAsync("Due again");
                    }
                );

                page.Choose("Was an edge up", "No, sound");
                page.Choose("Was each coat left to dry?", "Waits kept");
                page.Send();

                await page.ShowsAsync("Logged already");
                Assert.True(page.Has("By Mara Quill"));
                Assert.Equal(2, await clinic.ReadAsync(db => db.Bonds.CountAsync(Cancellation)));
            }
        );

    [Fact]
    public async Task A_first_fitting_needs_no_take_down()
    {
        _scene = new ChairScene { Bonded = false, Purpose = ServicePurpose.FirstFitting };
        await OnPageAsync(
            async (page, _) =>
            {
                await page.Open(_scene.Visit.Id).ShowsAsync("New bond");
                Assert.False(page.Has("Was an edge up"));
                page.Press("Add a product");
                page.Find("select").Change(_scene.Adhesive.Id.ToString());
                page.Choose("Was each coat left to dry?", "Waits kept");
                page.Send();
                await page.ShowsAsync("First fitting: a look-over on");
            }
        );
    }

    // The visit before: logged, and the next one booked.
    private async Task LogLastAsync(TestClinic clinic, InspectionGrades found)
    {
        await clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(_scene.Stylist, _scene.Salon),
            async slice =>
            {
                var input = (await slice.OpenAsync(_scene.Visit.Id, Cancellation))!.Start;
                (input.FoundLifted, input.WaitsKept) = (false, true);
                input.SetGrades(found, copied: false);
                return await slice.SaveAsync(Guid.CreateVersion7(), input, Cancellation);
            }
        );
        await clinic.LayAsync(_scene.BookNext);
    }

    private Task<VisitRecord> RecordAsync(TestClinic clinic) =>
        clinic.ReadAsync(db =>
            db.VisitRecords.AsNoTracking().OrderByDescending(r => r.RecordedAt).ThenByDescending(r => r.Id).FirstAsync(Cancellation)
        );

    private static CancellationToken Cancellation => Xunit.TestContext.Current.CancellationToken;

    private async Task OnPageAsync(Func<Page, TestClinic, Task> act)
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        await Page.AsAsync(clinic, _scene.Stylist, _scene.Salon, page => act(page, clinic));
    }

    private Task OnPageAgainAsync(TestClinic clinic, Func<Page, Task> act) => Page.AsAsync(clinic, _scene.Stylist, _scene.Salon, act);
}
