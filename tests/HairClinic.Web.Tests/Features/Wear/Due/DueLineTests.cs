using Bunit;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Wear;
using HairClinic.Web.Features.Wear;
using HairClinic.Web.Tests.Ui;
using HairClinic.Web.Ui.Wear;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Wear.Due;

/// <summary>One row, on Wednesday 3 February 2027 in London.</summary>
public sealed class DueLineTests : UiTestContext
{
    private static readonly LocalDate Today = new(2027, 2, 3);
    private static readonly SalonToday Elm = new(Guid.CreateVersion7(), "Elm Row", DateTimeZoneProviders.Tzdb["Europe/London"], Today);
    private static readonly SalonToday Harbour = new(
        Guid.CreateVersion7(),
        "Harbour",
        DateTimeZoneProviders.Tzdb["America/New_York"],
        Today
    );

    [Theory]
    [InlineData(44, "Overdue: 2 days")]
    [InlineData(43, "Overdue: 1 day")]
    [InlineData(42, "Window open")]
    [InlineData(28, "Window open")]
    [InlineData(27, "Opens tomorrow")]
    [InlineData(21, "Opens in 7 days")]
    [InlineData(20, "Holds")]
    public void A_row_says_where_the_bond_stands(int daysAgo, string state) =>
        Assert.Equal(state, Show(Row(daysAgo)).Find(".chip").TextContent.Trim());

    [Fact]
    public void A_take_down_is_called_one()
    {
        var day = Today.PlusDays(9);

        Assert.Contains(
            "Take-down due",
            Show(Row(20) with { Reasons = [new(DueRuleName.TakeDownBeforeEvent, day, day)] }).Markup,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("Take-down due", Show(Row(20)).Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Lifted_and_overdue_want_someone_and_the_others_do_not()
    {
        Assert.Single(Show(Row(43)).FindAll(".chip.wants"));
        Assert.Single(Show(Row(10) with { LiftReportedOn = Today.PlusDays(-1) }).FindAll(".chip.wants"));
        Assert.Empty(Show(Row(35)).FindAll(".chip.wants"));
    }

    [Fact]
    public void A_lift_of_unknown_day_says_when_it_was_told()
    {
        Assert.Equal("Lifted, told yesterday", Show(Row(10) with { LiftReportedOn = Today.PlusDays(-1) }).Find(".chip").TextContent.Trim());
        Assert.Equal(
            "Lifted 3 days ago",
            Show(Row(10) with { LiftReportedOn = Today, LiftedOn = Today.PlusDays(-3) }).Find(".chip").TextContent.Trim()
        );
    }

    [Fact]
    public void Name_pet_name_and_phone_can_be_covered_and_the_phone_rings_at_a_tap()
    {
        var row = Show(Row(35) with { CalledAs = "Addie", Phone = "+441632960001" });

        Assert.All(row.FindAll("a[href^='tel:'], a[href$='/card']"), link => Assert.Contains("private", link.ClassList));
        Assert.Contains(row.FindAll(".private"), e => e.TextContent.Contains("Addie", StringComparison.Ordinal));
        Assert.Equal("tel:+441632960001", row.Find("a[href^='tel:']").GetAttribute("href"));
    }

    [Fact]
    public void The_due_day_opens_to_its_reasons()
    {
        var why = Show(Row(35)).Find("details.why");

        Assert.Contains("Wed 10 Feb", why.QuerySelector("summary")!.TextContent, StringComparison.Ordinal);
        Assert.Single(why.QuerySelectorAll("p, li"));
    }

    [Fact]
    public void Booking_starts_near_the_due_day_and_never_in_the_past()
    {
        Assert.EndsWith("&around=2027-02-10", Show(Row(35)).Find("a.button[href*=book]").GetAttribute("href"), StringComparison.Ordinal);
        Assert.EndsWith("&around=2027-02-03", Show(Row(60)).Find("a.button[href*=book]").GetAttribute("href"), StringComparison.Ordinal);
    }

    [Fact]
    public void Who_is_booked_is_set_back_and_shows_the_hour_of_the_salon_it_is_in()
    {
        var at = Instant.FromUtc(2027, 2, 8, 15, 30);
        var row = Show(Row(35) with { Booking = new(Guid.CreateVersion7(), Harbour.Id, at, new(2027, 2, 8)) });

        Assert.Equal("quiet", row.Find("tr").ClassName);
        Assert.Equal("Booked Mon 8 Feb, 10:30", row.Find("a[href$='/visit-details']").TextContent);
        Assert.Empty(row.FindAll(".button"));
    }

    [Fact]
    public void A_booking_after_the_window_closes_says_so() =>
        Assert.Contains(
            "after the window closes",
            Show(
                Row(35) with
                {
                    Booking = new(Guid.CreateVersion7(), Elm.Id, Instant.FromUtc(2027, 2, 12, 10, 0), new(2027, 2, 12)),
                }
            ).Markup,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(ContactOutcome.RangNoAnswer, 1, "Rang, no answer, Wed 3 Feb, 09:00")]
    [InlineData(ContactOutcome.Messaged, 49, "Messaged, 2 days ago")]
    public void The_last_contact_is_told_with_its_day(ContactOutcome kind, int hoursAgo, string words)
    {
        var contact = new LastContact(kind, TestClinic.UsualNow - Duration.FromHours(hoursAgo), null, null);

        Assert.Contains(words, Show(Row(35) with { LastContact = contact }).Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_in_house_and_nothing_on_order_is_said_in_plain_words()
    {
        Assert.Contains("May lack a good unit", Show(Row(35) with { AtRisk = true }).Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("No spare", Show(Row(35)).Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void A_spare_that_is_missing_is_said_where_nothing_worse_is()
    {
        Assert.Contains("Order a spare", Show(Row(35) with { SpareMissing = true }).Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("Order a spare", Show(Row(35) with { SpareMissing = true, AtRisk = true }).Markup, StringComparison.Ordinal);
    }

    private IRenderedComponent<DueLine> Show(DueRow row) =>
        Render<DueLine>(p =>
            p.Add(line => line.Row, row)
                .Add(line => line.Salons, new Dictionary<Guid, SalonToday> { [Elm.Id] = Elm, [Harbour.Id] = Harbour })
                .Add(line => line.ContactHref, "/due?contact=1#contact")
                .Add(line => line.SoonDays, 7)
        );

    private static DueRow Row(int daysAgo)
    {
        var on = Today.PlusDays(-daysAgo);
        return new()
        {
            BondId = Guid.CreateVersion7(),
            Rank = 1,
            ClientId = Guid.CreateVersion7(),
            SalonId = Elm.Id,
            Code = "C-1",
            Name = "Nuria Quist",
            AppliedOn = on,
            OpensOn = on.PlusDays(28),
            DueOn = on.PlusDays(42),
            ClosesOn = on.PlusDays(42),
            Reasons = [new(DueRuleName.HoldWindow, on, on.PlusDays(42), 4, 6)],
            AtRisk = false,
        };
    }
}
