using HairClinic.Domain.Chairs;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Features.MyHair;
using HairClinic.Web.Features.Visits;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Booking = HairClinic.Web.Features.Visits.BookVisit;
using Moving = HairClinic.Web.Features.Visits.MoveVisit;
using Offering = HairClinic.Web.Features.Wear.OfferSlots;
using Own = HairClinic.Web.Features.MyHair.ChooseATime;
using WalkingIn = HairClinic.Web.Features.Visits.WalkIn;

namespace HairClinic.Web.Tests.Features.Visits.Slots;

/// <summary>One client in two salons: whatever books, the client is in one place, and whoever may see it is told which.</summary>
public sealed class OnePlaceAtATimeTests(PgServer server)
{
    private static readonly LocalDate Thursday = VisitScene.Thursday;
    private readonly VisitScene _scene = new();
    private Salon _quay = null!;
    private Chair _quayChair = null!;
    private Person _quayDesk = null!;
    private Visit _nine = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Neither_the_client_nor_the_desk_books_the_second_chair_beside_the_first()
    {
        await using var clinic = await OpenAsync();
        var client = new ClientActor(clinic.PracticeId, _scene.Ada.Id);
        var lift = await clinic.ReadAsync(db => db.ServiceKinds.FirstAsync(k => k.Purpose == ServicePurpose.FixLift, Cancel));

        var own = await clinic.UseAsync<Own, SelfBookingOutcome>(
            client,
            s =>
                s.SaveAsync(
                    new()
                    {
                        Key = Guid.CreateVersion7(),
                        Service = lift.Id,
                        At = At(9, 15),
                    },
                    Cancel
                )
        );
        var desk = await BookAsync(clinic, At(9, 45));
        var after = await BookAsync(clinic, At(10, 30));

        Assert.Null(own.At);
        Assert.Equal((At(9), "Elm Row"), (own.Own!.StartsAt, own.Own.Salon));
        Assert.Equal(SlotClash.Client, desk.Taken!.By);
        AssertNamesNine(desk.Taken.Client);
        Assert.NotEmpty(desk.Taken.Nearest);
        Assert.All(desk.Taken.Nearest, s => Assert.True(s.StartsAt >= At(10, 30) || s.StartsAt + Duration.FromMinutes(45) <= At(9)));
        Assert.NotNull(after.Booked);
    }

    [Fact]
    public async Task Free_times_leave_out_where_this_client_is_taken_and_nobody_else_s()
    {
        await using var clinic = await OpenAsync();
        var ask = new SlotRequest(
            _scene.Salon.Id,
            _scene.Salon.TimeZone,
            _scene.Wash.Id,
            [new(SegmentKind.HandsOn, 45)],
            Thursday,
            WithinDays: 0
        )
        {
            Start = At(9, 30),
        };

        var hers = await FindAsync(ask with { ClientId = _scene.Ada.Id });
        var his = await FindAsync(ask with { ClientId = _scene.Bo.Id });
        var moving = await FindAsync(ask with { ClientId = _scene.Ada.Id, ButVisit = _nine.Id });
        var offers = await clinic.UseAsync<Offering, IReadOnlyList<Offering.Offer>>(
            _scene.AtDesk(clinic),
            s => s.OpenAsync(_scene.Ada.Id, Cancel)
        );

        Assert.DoesNotContain(hers, s => s.StartsAt > At(8, 15) && s.StartsAt < At(10, 30));
        Assert.Contains(his, s => s.StartsAt == At(9, 30));
        Assert.Contains(moving, s => s.StartsAt == At(9, 30));
        Assert.NotEmpty(offers);
        Assert.DoesNotContain(offers, o => o.At.Date == Thursday && o.At.TimeOfDay < new LocalTime(10, 30));

        Task<IReadOnlyList<SlotOffer>> FindAsync(SlotRequest asked) =>
            clinic.UseAsync<SlotSearch, IReadOnlyList<SlotOffer>>(_scene.AtDesk(clinic), s => s.FindAsync(asked, Cancel));
    }

    [Fact]
    public async Task A_visit_is_not_moved_onto_another_of_the_same_client()
    {
        await using var clinic = await OpenAsync();
        var later = (await BookAsync(clinic, At(14))).Booked!.VisitId;
        var row = await VisitScene.ReadAsync(clinic, later);

        var outcome = await clinic.UseAsync<Moving, Moving.Outcome>(
            _scene.AtDesk(clinic),
            s =>
                s.SaveAsync(
                    Guid.CreateVersion7(),
                    new()
                    {
                        VisitId = later,
                        Version = row.Version,
                        ChairId = _scene.Chairs[1].Id,
                        PersonId = _scene.Ivo.Id,
                        StartsAt = At(10),
                    },
                    Cancel
                )
        );

        AssertNamesNine(outcome.Taken!.Client);
        Assert.Equal(At(14), (await VisitScene.ReadAsync(clinic, later)).StartsAt);
    }

    [Fact]
    public async Task To_a_desk_that_may_not_see_the_visit_the_client_is_busy_elsewhere()
    {
        await using var clinic = await OpenAsync();

        var there = await ClashAsync(clinic.Acting(_quayDesk, _quay), _scene.Ada.Id);
        var here = await ClashAsync(_scene.AtDesk(clinic), _scene.Ada.Id);

        Assert.Null(there!.Visit);
        Assert.Equal("Ada Fenwick is busy elsewhere at that time.", there.ToRefusal("Ada Fenwick").Message);
        Assert.Equal((At(9), "Elm Row", "Chair 1"), (here!.Visit!.StartsAt, here.Visit.Salon, here.Visit.Chair));
        Assert.Null(await ClashAsync(_scene.AtDesk(clinic), _scene.Bo.Id));

        Task<ClientClash?> ClashAsync(Actor actor, Guid client) =>
            clinic.UseAsync<SlotSearch, ClientClash?>(
                actor,
                s => s.FindClientClashAsync(client, At(9, 30), At(10), butVisit: null, Cancel)
            );
    }

    [Fact]
    public async Task A_walk_in_under_way_since_before_midnight_or_elsewhere_is_said_with_its_place()
    {
        await using var clinic = await OpenAsync();
        // In another salon, yesterday by the calendar and still going on.
        await clinic.LayAsync(s =>
        {
            var visit = new Visit(Guid.CreateVersion7(), _scene.Bo.Id, _quay.Id, _scene.Rebond.Id);
            visit.PutAt(
                [(SegmentKind.HandsOn, 120)],
                At(0) - Duration.FromMinutes(30),
                _quayChair.Id,
                null,
                _quay,
                [Guid.CreateVersion7()]
            );
            s.Db.Visits.Add(visit);
        });
        clinic.Clock.Reset(At(0, 20));

        var refusal = await Assert.ThrowsAsync<Refusal>(() =>
            clinic.UseAsync<WalkingIn, WalkingIn.Outcome>(
                clinic.Acting(_scene.Mara, _scene.Salon),
                s => s.SaveAsync(Guid.CreateVersion7(), new() { ClientId = _scene.Bo.Id, ServiceKindId = _scene.Wash.Id }, Cancel)
            )
        );

        Assert.Equal<object>(
            ["Bo Larch", Thursday.PlusDays(-1), new LocalTime(23, 30), new LocalTime(1, 30), "Quay"],
            refusal.Arguments.Take(5)
        );
    }

    [Fact]
    public async Task The_book_form_knows_before_anything_is_tapped()
    {
        await using var clinic = await OpenAsync();

        var said = await ClashAsync(At(9, 45));
        var free = await ClashAsync(At(10, 30));

        AssertNamesNine(said);
        Assert.Null(free);

        Task<Refusal?> ClashAsync(Instant from) =>
            clinic.UseAsync<Booking, Refusal?>(
                _scene.AtDesk(clinic),
                s => s.DescribeClientClashAsync(_scene.Ada.Id, from, from + Duration.FromMinutes(45), Cancel)
            );
    }

    [Fact]
    public async Task Sixteen_who_book_one_client_at_once_in_as_many_chairs_book_once()
    {
        var many = new VisitScene(chairs: 16);
        List<Person> people = [];
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                many.Lay(s);
                people = [.. Enumerable.Range(1, 16).Select(i => s.Hire($"Hand {i}", StaffRole.Stylist, many.Salon))];
            }
        );

        var outcomes = await Task.WhenAll(
            Enumerable
                .Range(0, 16)
                .Select(i =>
                    clinic.UseAsync<Booking, Booking.Outcome>(
                        many.AtDesk(clinic),
                        s =>
                            s.SaveAsync(
                                Guid.CreateVersion7(),
                                new()
                                {
                                    SalonId = many.Salon.Id,
                                    ClientId = many.Ada.Id,
                                    ServiceKindId = many.Wash.Id,
                                    ChairId = many.Chairs[i].Id,
                                    PersonId = people[i].Id,
                                    StartsAt = many.At(Thursday, 11, i),
                                },
                                Cancel
                            )
                    )
                )
        );

        Assert.Single(outcomes, o => o.Booked is not null);
        Assert.Equal(15, outcomes.Count(o => o.Taken is { By: SlotClash.Client, Client: not null }));
    }

    private static void AssertNamesNine(Refusal? said) =>
        Assert.Equal<object>(["Ada Fenwick", Thursday, new LocalTime(9, 0), new LocalTime(10, 30), "Elm Row", "Chair 1"], said!.Arguments);

    private Instant At(int hour, int minute = 0) => _scene.At(Thursday, hour, minute);

    private Task<TestClinic> OpenAsync() =>
        TestClinic.OpenAsync(
            server,
            s =>
            {
                _scene.Lay(s);
                _quay = s.OpenSalon("Quay", "Europe/London", "GBP", chairs: 1);
                _quayChair = s.Chairs[^1];
                _quayDesk = s.Hire("Desk there", StaffRole.FrontDesk, _quay);
                _nine = _scene.Book(s, _scene.Rebond, 0, _scene.Mara, At(9));
            }
        );

    private Task<Booking.Outcome> BookAsync(TestClinic clinic, Instant at) =>
        clinic.UseAsync<Booking, Booking.Outcome>(
            _scene.AtDesk(clinic),
            s =>
                s.SaveAsync(
                    Guid.CreateVersion7(),
                    new()
                    {
                        SalonId = _scene.Salon.Id,
                        ClientId = _scene.Ada.Id,
                        ServiceKindId = _scene.Wash.Id,
                        ChairId = _scene.Chairs[1].Id,
                        PersonId = _scene.Ivo.Id,
                        StartsAt = at,
                    },
                    Cancel
                )
        );
}
