using Bunit;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Features.Visits;
using HairClinic.Web.Tests.Ui;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Visits.Slots;

public sealed class SlotNoticesTests : UiTestContext
{
    private static readonly LocalDate Due = new(2027, 2, 5);
    private static readonly LocalDate Today = new(2027, 2, 3);

    public SlotNoticesTests() => JSInterop.Mode = JSRuntimeMode.Loose;

    [Fact]
    public void A_slot_says_day_time_person_chair_and_how_far_it_is_from_the_due_day()
    {
        var list = Render<SlotList>(p =>
            p.Add(l => l.Slots, [Offer(new(2027, 2, 3)), Offer(Due), Offer(new(2027, 2, 6))])
                .Add(l => l.Today, Today)
                .Add(l => l.Target, Due)
        );

        var slots = list.FindAll("button.slot").Select(b => string.Join(' ', b.Children.Select(span => span.TextContent))).ToList();
        Assert.Equal("Wed 3 Feb 09:00–10:30 Mara · Chair 1 2 days before the due day", slots[0]);
        Assert.EndsWith("on the due day", slots[1], StringComparison.Ordinal);
        Assert.EndsWith("1 day after the due day", slots[2], StringComparison.Ordinal);
    }

    [Fact]
    public void One_tap_takes_a_slot_and_none_while_a_save_is_under_way()
    {
        SlotOffer? taken = null;
        var list = Render<SlotList>(p => p.Add(l => l.Slots, [Offer(Due)]).Add(l => l.Today, Today).Add(l => l.OnTake, s => taken = s));

        list.Find("button.slot").Click();
        list.Render(p => p.Add(l => l.Resting, true));

        Assert.Equal(Due, taken!.StartsOn);
        Assert.True(list.Find("button.slot").HasAttribute("disabled"));
    }

    [Theory]
    [InlineData(SlotClash.Chair, "This chair was given to somebody else a moment ago.")]
    [InlineData(SlotClash.Hands, "This person was booked elsewhere at that time.")]
    public void The_loser_is_told_what_was_taken_and_what_is_nearest(SlotClash by, string said)
    {
        var notice = Render<BookingConflictNotice>(p =>
            p.Add(n => n.Taken, new BookingConflict(by, [Offer(Due)])).Add(n => n.Today, Today)
        );

        Assert.Contains(said, notice.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Single(notice.FindAll("button.slot"));
        JSInterop.VerifyFocusAsyncInvoke();
    }

    [Fact]
    public void Whose_client_has_another_visit_then_is_told_which_one_or_that_they_are_busy_elsewhere()
    {
        var seen = new ClashingVisit(
            Instant.FromUtc(2027, 2, 4, 9, 0),
            Instant.FromUtc(2027, 2, 4, 10, 30),
            "Europe/London",
            "Elm Row",
            "Chair 2"
        );

        Assert.Contains(
            "Ada Fenwick is booked Thu 4 Feb 2027, 09:00–10:30 at Elm Row, Chair 2.",
            Told(new(seen)),
            StringComparison.Ordinal
        );
        Assert.Contains("Ada Fenwick is busy elsewhere at that time.", Told(new(Visit: null)), StringComparison.Ordinal);

        string Told(ClientClash clash) =>
            Render<BookingConflictNotice>(p =>
                    p.Add(n => n.Taken, new BookingConflict(SlotClash.Client, []) { Client = clash.ToRefusal("Ada Fenwick") })
                        .Add(n => n.Today, Today)
                )
                .Find("[role=alert]")
                .TextContent;
    }

    [Fact]
    public void With_nothing_free_nearby_the_loser_is_told_what_to_do()
    {
        var notice = Render<BookingConflictNotice>(p =>
            p.Add(n => n.Taken, new BookingConflict(SlotClash.Chair, [])).Add(n => n.Today, Today)
        );

        Assert.Contains("Look further away", notice.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Doubts_are_listed_and_a_second_tap_means_it()
    {
        var insisted = 0;
        var notice = Render<DoubtNotice>(p => p.Add(n => n.Doubts, Enum.GetValues<Doubt>()).Add(n => n.OnInsist, () => insisted++));

        notice.Find("button").Click();

        Assert.Equal(6, notice.FindAll("li").Select(li => li.TextContent).Distinct().Count());
        Assert.Equal(1, insisted);
    }

    private static SlotOffer Offer(LocalDate day) =>
        new(
            (day + new LocalTime(9, 0)).InUtc().ToInstant(),
            day,
            new(9, 0),
            new(10, 30),
            Guid.CreateVersion7(),
            "Chair 1",
            Guid.CreateVersion7(),
            "Mara"
        );
}
