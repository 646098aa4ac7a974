using Bunit;
using HairClinic.Domain.Chairs;
using HairClinic.Domain.Visits;
using HairClinic.Web.Features.Visits;
using HairClinic.Web.Tests.Ui;
using NodaTime;
using Slice = HairClinic.Web.Features.Visits.BookVisit;

namespace HairClinic.Web.Tests.Features.Visits.BookVisit;

public sealed class BookVisitFormTests : UiTestContext
{
    private static readonly LocalDate Today = new(2027, 2, 3);
    private readonly Slice.Screen _screen = new(
        Guid.CreateVersion7(),
        "Elm Row",
        DateTimeZoneProviders.Tzdb["Europe/London"],
        Today,
        [
            Service("Full service", ServicePurpose.Rebond, 120),
            Service("Rebond", ServicePurpose.Rebond, 90),
            Service("Wash", ServicePurpose.WashAndStyle, 45),
        ],
        [new Choice(Guid.CreateVersion7(), "Mara")],
        [new Choice(Guid.CreateVersion7(), "Chair 1")]
    );

    public BookVisitFormTests() => BeInteractive();

    [Fact]
    public void Each_change_of_the_wish_asks_for_slots_anew()
    {
        var asked = 0;
        BookVisitCriteria wish = new(Today, 7, Chair: _screen.Chairs[0].Id, Start: TestClinic.UsualNow);
        var form = Render<BookVisitForm>(p =>
            p.Add(f => f.Screen, _screen)
                .Add(f => f.Input, new Slice.Input())
                .Add(f => f.Wish, wish)
                .Add(f => f.FindClients, (_, _) => Task.FromResult<IReadOnlyList<Web.Ui.Fields.ComboOption>>([]))
                .Add(f => f.WishChanged, w => wish = w)
                .Add(f => f.OnWish, () => asked++)
        );

        form.Find("#with").Change(_screen.People[0].Id.ToString());
        Assert.Equal((_screen.People[0].Id, _screen.Chairs[0].Id), (wish.OnlyPerson, wish.Chair));
        form.Render(p => p.Add(f => f.Wish, wish));
        form.Find("input[type=date]").Change("2027-03-01");

        // Another day leaves the tapped gap behind, and keeps the person.
        Assert.Equal((new LocalDate(2027, 3, 1), _screen.People[0].Id, null, null), (wish.Around, wish.OnlyPerson, wish.Chair, wish.Start));
        Assert.Equal(2, asked);
    }

    [Fact]
    public void The_plainest_rebond_is_proposed_unless_the_address_names_a_service()
    {
        Assert.Equal("Rebond", _screen.ServiceFor(null).Name);
        Assert.Equal("Wash", _screen.ServiceFor(_screen.Services[2].Id).Name);
        Assert.Equal("Rebond", _screen.ServiceFor(Guid.CreateVersion7()).Name);
    }

    [Fact]
    public void The_address_says_where_to_look_and_what_it_cannot_say_is_left_out()
    {
        var chair = _screen.Chairs[0].Id;

        Assert.Equal(new BookVisitCriteria(new(2027, 3, 1), 7), BookVisitCriteria.FromQuery(_screen, "2027-03-01", null, null));
        Assert.Equal(new BookVisitCriteria(Today, 7), BookVisitCriteria.FromQuery(_screen, "2020-01-01", null, "not an instant"));
        Assert.Equal(
            new BookVisitCriteria(new(2027, 2, 4), 0, null, chair, Instant.FromUtc(2027, 2, 4, 9, 0)),
            BookVisitCriteria.FromQuery(_screen, null, chair, "2027-02-04T09:00:00Z")
        );
    }

    [Fact]
    public void Client_service_and_place_are_asked_for()
    {
        var errors = new BookVisitRules().Validate(new Slice.Input { Note = new string('x', 501) }).Errors.Select(e => e.PropertyName);

        Assert.Equal(["ChairId", "ClientId", "Day", "Note", "PersonId", "ServiceKindId", "Time"], errors.Order());
    }

    [Fact]
    public void What_was_booked_is_said_once_more_with_the_ways_on()
    {
        var booked = new Slice.Booked(
            Guid.CreateVersion7(),
            "Ada Fenwick",
            "Rebond",
            Today,
            Instant.FromUtc(2027, 2, 3, 15, 0),
            Instant.FromUtc(2027, 2, 3, 16, 30),
            "America/New_York",
            "Chair 1",
            "Mara"
        );

        var notice = Render<BookedNotice>(p => p.Add(n => n.Booked, booked).Add(n => n.Today, Today));

        // The salon's clock, not London's.
        Assert.Contains("Wed 3 Feb, 10:00", notice.Markup, StringComparison.Ordinal);
        Assert.Equal("/day?date=2027-02-03", notice.Find("a.primary").GetAttribute("href"));
        Assert.NotNull(notice.Find($"a[href='/visits/{booked.VisitId}/call-off']"));
    }

    private static Slice.ServiceChoice Service(string name, ServicePurpose purpose, int minutes) =>
        new(Guid.CreateVersion7(), name, purpose, [new ServiceSegment(SegmentKind.HandsOn, minutes)]);
}
