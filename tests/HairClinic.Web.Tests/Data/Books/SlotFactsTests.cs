using HairClinic.Domain.Chairs;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Tests.Features.Visits;
using NodaTime;

namespace HairClinic.Web.Tests.Data.Books;

public sealed class SlotFactsTests(PgServer server)
{
    private static readonly LocalDate Thursday = VisitScene.Thursday;
    private readonly VisitScene _scene = new(chairs: 1);

    [Fact]
    public async Task Two_weeks_of_a_salon_are_read_in_four_round_trips()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);

        await LoadAsync(clinic, Thursday, Thursday.PlusDays(14));

        Assert.Equal(4, clinic.Commands.All.Count);
    }

    [Fact]
    public async Task An_empty_day_is_free_from_opening_to_closing()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);

        var starts = await StartsAsync(clinic, _scene.Rebond);

        Assert.Equal(new LocalTime(9, 0), starts[0]);
        // Ninety minutes before six.
        Assert.Equal(new LocalTime(16, 30), starts[^1]);
    }

    [Fact]
    public async Task A_taken_chair_is_not_offered_and_a_visit_called_off_gives_it_back()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        var starts = await StartsAsync(clinic, _scene.Rebond);

        // Nine to half past ten is taken; the visit at two was called off.
        Assert.Equal(new LocalTime(10, 30), starts[0]);
        Assert.Contains(new LocalTime(14, 0), starts);

        void Lay(Scene s)
        {
            _scene.Lay(s);
            _scene.Book(s, _scene.Rebond, 0, _scene.Mara, _scene.At(Thursday, 9));
            _scene.Book(s, _scene.Rebond, 0, _scene.Mara, _scene.At(Thursday, 14)).Cancel();
        }
    }

    [Fact]
    public async Task Hands_that_are_busy_in_another_salon_are_busy()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        var book = await LoadAsync(clinic, Thursday, Thursday);
        var slots = book.Nearest(Wish(_scene.Rebond, 9) with { OnlyPerson = _scene.Mara.Id, Best = 1 });

        Assert.Equal(new LocalTime(10, 30), Wall(slots[0]));

        void Lay(Scene s)
        {
            _scene.Lay(s);
            var other = s.OpenSalon("Quay", "Europe/London", "GBP", chairs: 1);
            _scene.Mara.SetSalons([(Guid.CreateVersion7(), _scene.Salon.Id), (Guid.CreateVersion7(), other.Id)]);
            s.Book(_scene.Ada, _scene.Rebond, s.Chairs.Single(c => c.SalonId == other.Id), _scene.Mara, _scene.At(Thursday, 9));
        }
    }

    [Fact]
    public async Task Who_is_away_is_not_offered()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        var people = (await LoadAsync(clinic, Thursday, Thursday))
            .Nearest(Wish(_scene.Rebond, 9) with { Best = 50 })
            .Select(s => s.PersonId)
            .Distinct();

        Assert.Equal([_scene.Ivo.Id], people);

        void Lay(Scene s)
        {
            _scene.Lay(s);
            _scene.Mara.AddAbsence(Guid.CreateVersion7(), Thursday, Thursday, "course");
        }
    }

    [Fact]
    public async Task Who_has_hours_of_their_own_works_only_in_them()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        var starts = await StartsAsync(clinic, _scene.Rebond, _scene.Ivo);

        Assert.Equal([new(14, 0), new(14, 15), new(14, 30)], starts);

        void Lay(Scene s)
        {
            _scene.Lay(s);
            _scene.Ivo.SetWorkingHours([
                (Guid.CreateVersion7(), _scene.Salon.Id, IsoDayOfWeek.Thursday, new LocalTime(14, 0), new LocalTime(16, 0)),
            ]);
        }
    }

    [Fact]
    public async Task A_trainee_is_offered_only_for_what_they_may_do_alone()
    {
        Person? trainee = null;
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var book = await LoadAsync(clinic, Thursday, Thursday);

        Assert.Empty(book.Nearest(Wish(_scene.Rebond, 9) with { OnlyPerson = trainee!.Id }));
        Assert.NotEmpty(book.Nearest(Wish(_scene.Wash, 9) with { OnlyPerson = trainee.Id }));

        void Lay(Scene s)
        {
            _scene.Lay(s);
            trainee = s.Hire("Pia", StaffRole.Trainee, _scene.Salon);
            trainee.SetSkills([(Guid.CreateVersion7(), _scene.Wash.Id)]);
        }
    }

    [Fact]
    public async Task A_closed_day_offers_nothing()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        Assert.Empty(await StartsAsync(clinic, _scene.Rebond));

        void Lay(Scene s)
        {
            _scene.Lay(s);
            _scene.Salon.AddClosure(Guid.CreateVersion7(), Thursday, Thursday, "stocktaking");
        }
    }

    [Fact]
    public async Task A_visit_that_is_to_be_moved_does_not_stand_in_its_own_way()
    {
        Visit? visit = null;
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                _scene.Lay(s);
                visit = _scene.Book(s, _scene.Rebond, 0, _scene.Mara, _scene.At(Thursday, 9));
            }
        );

        var book = await LoadAsync(clinic, Thursday, Thursday, visit!.Id);

        Assert.Equal(new LocalTime(9, 15), Wall(book.Nearest(Wish(_scene.Rebond, 9, 15) with { Best = 1 })[0]));
    }

    [Fact]
    public async Task A_second_client_is_offered_the_drying_time_of_the_first_but_not_the_chair()
    {
        var two = new VisitScene(chairs: 2);
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var day = new Interval(two.At(Thursday, 0), two.At(Thursday.PlusDays(1), 0));
        var book = await clinic.ReadAsync(db => SlotFacts.LoadAsync(db, two.Salon.Id, day, null, TestContext.Current.CancellationToken));
        var twenty = new ServiceTimeline([new ServiceSegment(SegmentKind.HandsOn, 15)]);

        var slot = book.Nearest(new SlotCriteria(twenty, two.Wash.Id, two.At(Thursday, 9, 30)) { OnlyPerson = two.Mara.Id, Best = 1 })[0];

        // Hands on from nine, a coat dries from half past nine to ten to ten.
        Assert.Equal((two.At(Thursday, 9, 30), two.Chairs[1].Id), (slot.StartsAt, slot.ChairId));

        void Lay(Scene s)
        {
            two.Lay(s);
            two.Book(s, two.Coats, 0, two.Mara, two.At(Thursday, 9));
        }
    }

    [Fact]
    public async Task A_client_is_first_offered_another_half_day_each_time()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        var book = await LoadAsync(clinic, Thursday, Thursday.PlusDays(2));

        var slots = book.FindAcrossHalfDays(Wish(_scene.Rebond, 12));

        Assert.Equal(6, slots.Count);
        Assert.Equal(6, slots.Select(s => (_scene.Salon.DayOf(s.StartsAt), Wall(s) < LocalTime.Noon)).Distinct().Count());
        Assert.All(slots.Take(2), s => Assert.Equal(Thursday, _scene.Salon.DayOf(s.StartsAt)));
    }

    private async Task<List<LocalTime>> StartsAsync(TestClinic clinic, ServiceKind service, Person? only = null)
    {
        var book = await LoadAsync(clinic, Thursday, Thursday);
        return [.. book.Nearest(Wish(service, 9) with { Best = 200, OnlyPerson = only?.Id }).Select(Wall).Order()];
    }

    private Task<SlotFacts> LoadAsync(TestClinic clinic, LocalDate first, LocalDate last, Guid? butVisit = null, Guid? client = null) =>
        clinic.ReadAsync(db =>
            SlotFacts.LoadAsync(
                db,
                _scene.Salon.Id,
                new Interval(_scene.At(first, 0), _scene.At(last.PlusDays(1), 0)),
                client,
                TestContext.Current.CancellationToken,
                butVisit
            )
        );

    private SlotCriteria Wish(ServiceKind service, int hour, int minute = 0) =>
        new(
            new ServiceTimeline([.. service.Steps.OrderBy(s => s.Position).Select(s => new ServiceSegment(s.Kind, s.Minutes))]),
            service.Id,
            _scene.At(Thursday, hour, minute)
        );

    private LocalTime Wall(Slot slot) => slot.StartsAt.InZone(_scene.Salon.TimeZone).TimeOfDay;
}
