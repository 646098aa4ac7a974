using Bunit;
using HairClinic.Domain.Visits;
using HairClinic.Web.Features.Visits;
using HairClinic.Web.Tests.Ui;
using NodaTime;
using Slice = HairClinic.Web.Features.Visits.Day;

namespace HairClinic.Web.Tests.Features.Visits.Day;

public sealed class DayLanesTests : UiTestContext
{
    private static readonly DateTimeZone London = DateTimeZoneProviders.Tzdb["Europe/London"];
    private static readonly Guid Chair = Guid.CreateVersion7();

    // tzdata: Europe/London goes back an hour on 2027-10-31 at 02:00.
    private static readonly LocalDate LongDay = new(2027, 10, 31);

    [Fact]
    public void On_the_long_day_opening_hours_and_visits_keep_their_own_words()
    {
        var lanes = Draw(LongDay, At(LongDay, 9), At(LongDay, 18), [Visit(At(LongDay, 10), 90)]);

        Assert.Equal("09:00", lanes.FindAll("thead th")[1].TextContent);
        Assert.Equal("10:00–11:30", lanes.Find(".block .when").TextContent);
        Assert.Equal(["09:00–10:00 free", "11:30–18:00 free"], lanes.FindAll("a.free .when").Select(w => w.TextContent));
    }

    [Fact]
    public void A_salon_open_all_night_shows_twenty_five_hours_with_the_repeated_one_twice()
    {
        var midnight = London.AtStartOfDay(LongDay).ToInstant();

        var lanes = Draw(
            LongDay,
            midnight,
            London.AtStartOfDay(LongDay.PlusDays(1)).ToInstant(),
            [Visit(midnight + Duration.FromMinutes(90), 30), Visit(midnight + Duration.FromMinutes(150), 30)]
        );

        var hours = lanes.FindAll("thead th").Skip(1).Select(th => th.TextContent).ToList();
        Assert.Equal(25, hours.Count);
        Assert.Equal(["00:00", "01:00", "01:00", "02:00"], hours.Take(4));
        Assert.Equal(2, lanes.FindAll(".block").Count);
    }

    [Fact]
    public void A_gap_leads_to_the_dialog_with_its_chair_and_start()
    {
        var day = VisitScene.Thursday;

        var lanes = Draw(day, At(day, 9), At(day, 18), []);

        Assert.Equal($"/visits/book-visit?chair={Chair}&start=2027-02-04T09:00:00Z", lanes.Find("a.free").GetAttribute("href"));
    }

    [Fact]
    public void A_stylist_and_a_day_gone_by_have_no_gaps_to_fill()
    {
        var (tomorrow, yesterday) = (VisitScene.Thursday, new LocalDate(2027, 2, 2));

        Assert.Empty(Draw(tomorrow, At(tomorrow, 9), At(tomorrow, 18), [], mayBook: false).FindAll("a.free"));
        Assert.Empty(Draw(yesterday, At(yesterday, 9), At(yesterday, 18), [Visit(At(yesterday, 10), 60)]).FindAll("a.free"));
    }

    [Fact]
    public void Whoever_did_not_come_leaves_a_gap()
    {
        var day = VisitScene.Thursday;
        var gone = Visit(At(day, 10), 60) with { State = VisitState.DidNotCome, HoldsChair = false };

        Assert.Empty(Draw(day, At(day, 9), At(day, 18), [gone]).FindAll(".block"));
    }

    private IRenderedComponent<DayLanes> Draw(
        LocalDate day,
        Instant opens,
        Instant closes,
        IReadOnlyList<Slice.VisitView> visits,
        bool mayBook = true
    )
    {
        var now = TestClinic.UsualNow;
        var screen = new Slice.Screen(
            "Elm Row",
            London,
            day,
            now.InZone(London).Date,
            now,
            [new Interval(opens, closes)],
            null,
            [new(Chair, "Chair 1", Retired: false)],
            visits,
            []
        )
        {
            MayBook = mayBook,
        };
        return Render<DayLanes>(p => p.Add(l => l.Screen, screen).Add(l => l.Label, "The day"));
    }

    private static Instant At(LocalDate day, int hour) => (day + new LocalTime(hour, 0)).InZoneStrictly(London).ToInstant();

    private static Slice.VisitView Visit(Instant at, int minutes) =>
        new(
            Guid.CreateVersion7(),
            1,
            VisitState.Booked,
            HoldsChair: true,
            Chair,
            at,
            at + Duration.FromMinutes(minutes),
            "Ada Fenwick",
            "Rebond",
            ServicePurpose.Rebond,
            "Chair 1",
            "Mara",
            []
        );
}
