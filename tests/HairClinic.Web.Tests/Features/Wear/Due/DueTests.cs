using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Visits;
using HairClinic.Web.Features.Wear;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Wear.Due;

public sealed class DueTests(PgServer server)
{
    private readonly DueList _list = new();

    [Fact]
    public async Task The_lifted_come_first_then_the_longest_overdue_then_whoever_closes_soonest()
    {
        await using var clinic = await OpenAsync(l =>
        {
            l.Bonded("opening", 22);
            l.Bonded("just open", 30);
            l.Bonded("a day over", 43);
            l.Lifted("lifted young", 5, 1);
            l.Bonded("closes today", 42);
            l.Bonded("a month over", 73);
            l.Lifted("lifted old", 50, 20);
        });

        var screen = await _list.OpenAsync(clinic);

        Assert.Equal(
            ["lifted old", "lifted young", "a month over", "a day over", "closes today", "just open", "opening"],
            DueList.Codes(screen)
        );
    }

    [Fact]
    public async Task A_window_that_opens_in_eight_days_is_not_listed_yet_and_one_that_opens_in_seven_is()
    {
        await using var clinic = await OpenAsync(l =>
        {
            l.Bonded("in eight", 20);
            l.Bonded("in seven", 21);
        });

        Assert.Equal(["in seven"], DueList.Codes(await _list.OpenAsync(clinic)));
        clinic.Clock.AdvanceDays(1);
        Assert.Equal(["in seven", "in eight"], DueList.Codes(await _list.OpenAsync(clinic)));
    }

    [Theory]
    [InlineData(DuePart.Lifted, "lifted")]
    [InlineData(DuePart.Overdue, "overdue")]
    [InlineData(DuePart.Open, "first day|last day")]
    [InlineData(DuePart.Opening, "opening")]
    [InlineData(DuePart.Booked, "booked lifted|booked")]
    [InlineData(DuePart.PutOff, "put off")]
    public async Task Each_part_holds_its_own_and_counts_them(DuePart part, string codes)
    {
        await using var clinic = await OpenAsync(l =>
        {
            l.Lifted("lifted", 30, 2);
            l.Bonded("overdue", 43);
            l.Bonded("last day", 42);
            l.Bonded("first day", 28);
            l.Bonded("opening", 27);
            l.Booked(l.Bonded("booked", 41).Client, ServicePurpose.Rebond, 2);
            l.PutOff(l.Bonded("put off", 40).Client, 3);
            var lifted = l.Bonded("booked lifted", 10);
            lifted.Bond.ReportLift(new(l.Today, l.Today, null, false));
            l.Booked(lifted.Client, ServicePurpose.FixLift, 1);
        });

        var screen = await _list.OpenAsync(clinic, part);

        Assert.Equal(codes.Split('|').Order(), DueList.Codes(screen).Order());
        Assert.Equal(screen.Rows.Count, screen.Counts.CountOf(part));
        Assert.Equal(5, screen.Counts.CountOf(DuePart.All));
    }

    [Fact]
    public async Task Whoever_is_booked_is_shown_apart_with_the_booking()
    {
        Visit? visit = null;
        await using var clinic = await OpenAsync(l =>
        {
            var client = l.Bonded("booked", 40).Client;
            l.Booked(client, ServicePurpose.Rebond, 9, hour: 14);
            visit = l.Booked(client, ServicePurpose.Rebond, 3);
        });

        Assert.Empty((await _list.OpenAsync(clinic)).Rows);
        var row = Assert.Single((await _list.OpenAsync(clinic, DuePart.Booked)).Rows);

        Assert.Equal(new DueBooking(visit!.Id, _list.ElmRow.Id, visit.StartsAt, visit.Day), row.Booking);
    }

    [Fact]
    public async Task A_wash_a_visit_called_off_and_one_of_yesterday_book_no_rebond()
    {
        await using var clinic = await OpenAsync(l =>
        {
            l.Booked(l.Bonded("wash", 40).Client, ServicePurpose.WashAndStyle, 2);
            l.Booked(l.Bonded("called off", 41).Client, ServicePurpose.Rebond, 3).Cancel();
            l.Booked(l.Bonded("yesterday", 42).Client, ServicePurpose.Rebond, -1);
        });

        var screen = await _list.OpenAsync(clinic);

        Assert.Equal(["yesterday", "called off", "wash"], DueList.Codes(screen));
        Assert.All(screen.Rows, row => Assert.Null(row.Booking));
    }

    [Fact]
    public async Task The_put_off_return_on_their_day()
    {
        await using var clinic = await OpenAsync(l => l.PutOff(l.Bonded("away", 38).Client, 2));

        Assert.Empty((await _list.OpenAsync(clinic)).Rows);
        clinic.Clock.AdvanceDays(1);
        Assert.Empty((await _list.OpenAsync(clinic)).Rows);
        clinic.Clock.AdvanceDays(1);
        Assert.Equal(["away"], DueList.Codes(await _list.OpenAsync(clinic)));
    }

    [Fact]
    public async Task The_last_word_counts_and_only_about_this_bond()
    {
        var hourAgo = TestClinic.UsualNow - Duration.FromHours(1);
        await using var clinic = await OpenAsync(l =>
        {
            var shortened = l.Bonded("shortened", 40).Client;
            l.PutOff(shortened, 30, hourAgo - Duration.FromHours(1));
            l.PutOff(shortened, 0, hourAgo);
            var earlier = l.Bonded("of the bond before", 39, at: TestClinic.UsualNow - Duration.FromDays(39)).Client;
            l.PutOff(earlier, 30, TestClinic.UsualNow - Duration.FromDays(40));
        });

        Assert.Equal(["shortened", "of the bond before"], DueList.Codes(await _list.OpenAsync(clinic)));
    }

    [Fact]
    public async Task A_lift_reported_after_a_put_off_brings_them_back_at_once()
    {
        await using var clinic = await OpenAsync(l =>
        {
            var (client, bond) = l.Bonded("lifted", 38);
            l.PutOff(client, 10);
            bond.ReportLift(new(l.Today, null, null, false));
        });

        Assert.Equal(["lifted"], DueList.Codes(await _list.OpenAsync(clinic)));
    }

    [Fact]
    public async Task A_row_carries_the_reasons_and_the_last_contact()
    {
        await using var clinic = await OpenAsync(l =>
        {
            var client = l.Bonded("rung", 40).Client;
            l.Note(client, ContactOutcome.Rang, TestClinic.UsualNow - Duration.FromDays(2));
            l.Note(client, ContactOutcome.Messaged, TestClinic.UsualNow - Duration.FromDays(1));
        });

        var row = Assert.Single((await _list.OpenAsync(clinic)).Rows);

        Assert.Equal(new LastContact(ContactOutcome.Messaged, TestClinic.UsualNow - Duration.FromDays(1), null, null), row.LastContact);
        Assert.Equal(_list.Today.PlusDays(2), row.ClosesOn);
        Assert.Equal(Domain.Wear.DueRuleName.HoldWindow, row.Reasons[0].Rule);
    }

    private async Task<TestClinic> OpenAsync(Action<DueList> clients) => await TestClinic.OpenAsync(server, _list.Lay(clients));
}
