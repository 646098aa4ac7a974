using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Features.Visits;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Visits.BookVisit;

namespace HairClinic.Web.Tests.Features.Visits.BookVisit;

public sealed class BookVisitTests(PgServer server)
{
    private static readonly LocalDate Thursday = VisitScene.Thursday;
    private readonly VisitScene _scene = new();

    [Fact]
    public async Task A_booked_visit_takes_its_chair_and_its_hands()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);

        var outcome = await BookAsync(clinic, Input(_scene.Coats, 0, _scene.Mara, 11));

        var visit = await VisitScene.ReadAsync(clinic, outcome.Booked!.VisitId);
        Assert.Equal(
            (VisitState.Booked, true, _scene.Chairs[0].Id, Thursday),
            (visit.State, visit.HoldsChair, visit.ChairId!.Value, visit.Day)
        );
        Assert.Equal([true, false, true], visit.Segments.OrderBy(s => s.Position).Select(s => s.HoldsHands));
        Assert.Equal(("Ada Fenwick", "Chair 1", "Mara"), (outcome.Booked.Client, outcome.Booked.Chair, outcome.Booked.Person));
    }

    [Fact]
    public async Task Booking_takes_four_round_trips_of_which_one_writes()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);

        await BookAsync(clinic, Input(_scene.Coats, 0, _scene.Mara, 11));

        Assert.Equal(4, clinic.Commands.All.Count);
        Assert.Single(clinic.Commands.All, c => c.Contains("INSERT", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_dialog_opens_in_four_round_trips_and_knows_the_client_after_one_more()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);

        var screen = await UseAsync(clinic, slice => slice.OpenAsync(null, TestContext.Current.CancellationToken));
        var client = await UseAsync(clinic, slice => slice.ClientAsync(_scene.Ada.Id, TestContext.Current.CancellationToken));

        Assert.Equal(5, clinic.Commands.All.Count);
        Assert.Equal(("Elm Row", new LocalDate(2027, 2, 3), 2, 2), (screen!.Salon, screen.Today, screen.Chairs.Count, screen.People.Count));
        Assert.Equal(ServicePurpose.Rebond, screen.ServiceFor(null).Purpose);
        Assert.Equal(("Ada Fenwick", null), (client!.Name, client.Due));
    }

    [Fact]
    public async Task The_client_is_shown_with_the_due_day_and_what_is_booked_already()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        var client = await UseAsync(clinic, slice => slice.ClientAsync(_scene.Ada.Id, TestContext.Current.CancellationToken));

        Assert.InRange(client!.Due!.DueOn, client.Due.Opens, client.Due.Closes);
        Assert.Equal("Rebond", Assert.Single(client.Upcoming).Service);
        Assert.Equal(_scene.Mara.Id, client.UsualPerson);

        void Lay(Scene s)
        {
            _scene.Lay(s);
            var kind = s.AddUnitKind("Everyday", "French lace", "Workshop under test");
            var adhesive = s.AddProduct("Adhesive A", Domain.Shelf.ProductKind.Adhesive, "acrylic", "L1");
            s.AddBond(_scene.Ada, s.AddUnit(_scene.Ada, kind, new LocalDate(2027, 1, 4)), new LocalDate(2027, 1, 12), adhesive);
            _scene.Book(s, _scene.Rebond, 0, _scene.Mara, _scene.At(new LocalDate(2027, 1, 12), 9)).Finish(Thursday);
            _scene.Book(s, _scene.Rebond, 0, _scene.Ivo, _scene.At(Thursday, 9));
        }
    }

    [Theory]
    [InlineData("fen")]
    [InlineData("ADA fenw")]
    [InlineData("c-1")]
    [InlineData("960001")]
    public async Task A_client_is_found_by_the_beginning_of_names_and_code_or_the_end_of_the_phone(string typed)
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);

        var found = await UseAsync(clinic, slice => slice.FindClientsAsync(typed, TestContext.Current.CancellationToken));

        Assert.Equal(_scene.Ada.Id.ToString(), Assert.Single(found).Key);
    }

    [Theory]
    [InlineData("fenx")]
    [InlineData("ada larch")]
    [InlineData("%")]
    public async Task Every_word_typed_must_fit(string typed)
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);

        Assert.Empty(await UseAsync(clinic, slice => slice.FindClientsAsync(typed, TestContext.Current.CancellationToken)));
    }

    [Fact]
    public async Task A_time_the_salon_is_closed_is_doubted_and_booked_on_the_second_tap_with_a_note()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        var input = Input(_scene.Rebond, 0, _scene.Mara, 17) with { Note = "Brings the spare" };

        var first = await BookAsync(clinic, input);
        var second = await BookAsync(clinic, input with { DespiteDoubts = true });

        Assert.Equal([Doubt.OutsideOpeningHours], first.Doubts);
        Assert.Null(first.Booked);
        var note = (await VisitScene.ReadAsync(clinic, second.Booked!.VisitId)).Note;
        Assert.Equal("Brings the spare\nAgreed all the same: The salon is closed at that time, or closes before the visit ends.", note);
    }

    [Fact]
    public async Task A_past_time_an_absent_person_and_a_service_not_yet_learnt_are_doubted()
    {
        Person? pia = null;
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        var past = await BookAsync(clinic, Input(_scene.Wash, 0, _scene.Mara, 9) with { Day = new LocalDate(2027, 2, 3) });
        var absent = await BookAsync(clinic, Input(_scene.Wash, 0, _scene.Ivo, 9));
        var learning = await BookAsync(clinic, Input(_scene.Rebond, 0, pia!, 9));

        Assert.Equal([Doubt.Past], past.Doubts);
        Assert.Equal([Doubt.PersonNotAtWork], absent.Doubts);
        Assert.Equal([Doubt.PersonNotAlone], learning.Doubts);
        Assert.Equal(0, await clinic.ReadAsync(db => db.Visits.CountAsync(TestContext.Current.CancellationToken)));

        void Lay(Scene s)
        {
            _scene.Lay(s);
            _scene.Ivo.AddAbsence(Guid.CreateVersion7(), Thursday, Thursday, "course");
            pia = s.Hire("Pia", StaffRole.Trainee, _scene.Salon);
            pia.SetSkills([(Guid.CreateVersion7(), _scene.Wash.Id)]);
        }
    }

    // tzdata: Europe/London skips 01:00–02:00 on 2027-03-28.
    [Fact]
    public async Task A_time_the_clocks_skip_is_refused()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        var input = Input(_scene.Wash, 0, _scene.Mara, 1) with { Day = new LocalDate(2027, 3, 28), Time = new LocalTime(1, 30) };

        var refusal = await Assert.ThrowsAsync<Refusal>(() => BookAsync(clinic, input));

        Assert.StartsWith("The clocks go forward", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_chair_of_another_salon_and_a_person_who_left_are_refused()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        await Refused.SayingAsync(
            "This chair is no longer used. Choose another.",
            () => BookAsync(clinic, Input(_scene.Wash, 0, _scene.Mara, 9) with { ChairId = _scene.Chairs[^1].Id })
        );
        await Refused.SayingAsync(
            "This person does not work in {0}. Choose somebody else.",
            () => BookAsync(clinic, Input(_scene.Wash, 0, _scene.Ivo, 9))
        );

        void Lay(Scene s)
        {
            _scene.Lay(s);
            s.OpenSalon("Quay", "Europe/London", "GBP", chairs: 1);
            _scene.Chairs.Add(s.Chairs[^1]);
            _scene.Ivo.Leave();
        }
    }

    [Fact]
    public async Task Whoever_does_not_work_in_a_salon_cannot_book_in_it()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        var elsewhere = clinic.Acting(_scene.Desk);

        await Refused.SayingAsync(
            "You do not work in this salon.",
            () =>
                clinic.UseAsync<Slice, Slice.Outcome>(
                    elsewhere,
                    slice =>
                        slice.SaveAsync(Guid.CreateVersion7(), Input(_scene.Wash, 0, _scene.Mara, 9), TestContext.Current.CancellationToken)
                )
        );
    }

    [Fact]
    public async Task A_client_whom_one_may_not_open_is_not_booked_and_so_not_opened()
    {
        var hidden = Guid.Empty;
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                _scene.Lay(s);
                hidden = s.AddClient("H-1", "Hidden One", s.OpenSalon("Quay", "Europe/London", "GBP", chairs: 1)).Id;
            }
        );

        await Refused.SayingAsync(
            "This client is not in the book any more. Look them up again.",
            () => BookAsync(clinic, Input(_scene.Wash, 0, _scene.Mara, 9) with { ClientId = hidden })
        );

        Assert.False(
            await clinic.ReadAsync(db =>
                db.ClientGrants.AnyAsync(g => g.ClientId == hidden && g.SalonId == _scene.Salon.Id, TestContext.Current.CancellationToken)
            )
        );
    }

    // Whoever made the bond books the next one at once: the page, its times and the saving are the stylist's too.
    [Fact]
    public async Task A_stylist_books_the_next_visit_of_a_client_they_reach()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        var stylist = clinic.Acting(_scene.Ivo, _scene.Salon);

        var screen = await clinic.UseAsync<Slice, Slice.Screen?>(stylist, s => s.OpenAsync(null, TestContext.Current.CancellationToken));
        var outcome = await clinic.UseAsync<Slice, Slice.Outcome>(
            stylist,
            s => s.SaveAsync(Guid.CreateVersion7(), Input(_scene.Coats, 0, _scene.Mara, 11), TestContext.Current.CancellationToken)
        );

        Assert.False(screen!.MayCallOff);
        var visit = await VisitScene.ReadAsync(clinic, outcome.Booked!.VisitId);
        Assert.Equal((VisitState.Booked, _scene.Ada.Id), (visit.State, visit.ClientId));
    }

    private Slice.Input Input(ServiceKind service, int chair, Person person, int hour) =>
        new()
        {
            SalonId = _scene.Salon.Id,
            ClientId = _scene.Ada.Id,
            ServiceKindId = service.Id,
            ChairId = _scene.Chairs[chair].Id,
            PersonId = person.Id,
            Day = Thursday,
            Time = new LocalTime(hour, 0),
        };

    private Task<Slice.Outcome> BookAsync(TestClinic clinic, Slice.Input input) =>
        UseAsync(clinic, slice => slice.SaveAsync(Guid.CreateVersion7(), input, TestContext.Current.CancellationToken));

    private Task<T> UseAsync<T>(TestClinic clinic, Func<Slice, Task<T>> call) => clinic.UseAsync(_scene.AtDesk(clinic), call);
}
