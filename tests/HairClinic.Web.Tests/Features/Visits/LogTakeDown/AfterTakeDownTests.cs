using HairClinic.Domain.Bonding;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Features.Visits;
using NodaTime;
using Booking = HairClinic.Web.Features.Visits.BookVisit;
using CardSlice = HairClinic.Web.Features.Clients.Card;
using Slice = HairClinic.Web.Features.Visits.LogTakeDown;
using Walk = HairClinic.Web.Features.Visits.WalkIn;

namespace HairClinic.Web.Tests.Features.Visits.LogTakeDown;

/// <summary>What the rest of the house says of a head whose bond came off and whose next is to wait.</summary>
public sealed class AfterTakeDownTests(PgServer server)
{
    private static readonly LocalDate Until = ChairScene.Today.PlusDays(10);
    private readonly ChairScene _scene = new();
    private Person _desk = null!;

    [Theory]
    [InlineData(RemovalReason.Skin, StaffRole.FrontDesk, null)]
    [InlineData(RemovalReason.Skin, StaffRole.Stylist, RemovalReason.Skin)]
    [InlineData(RemovalReason.Reaction, StaffRole.FrontDesk, null)]
    [InlineData(RemovalReason.Operation, StaffRole.FrontDesk, null)]
    [InlineData(RemovalReason.Treatment, StaffRole.FrontDesk, null)]
    [InlineData(RemovalReason.Rest, StaffRole.FrontDesk, RemovalReason.Rest)]
    public async Task The_desk_reads_until_when_and_only_who_may_read_health_reads_why(
        RemovalReason because,
        StaffRole role,
        RemovalReason? read
    )
    {
        await using var clinic = await TakenDownAsync(because, Until);

        var card = await clinic.UseAsync<CardSlice, CardSlice.Opened>(
            clinic.Acting(role == StaffRole.FrontDesk ? _desk : _scene.Stylist, _scene.Salon),
            s => s.OpenAsync(_scene.Client.Id, Cancellation)
        );

        Assert.Equal(new CardSlice.TakenDown(ChairScene.Today, read, Until), card.Screen!.TakenDown);
        Assert.Null(card.Screen.Worn);
        // How it was made is still the last recipe.
        Assert.Equal(_scene.Bond!.Id, card.Screen.Recipe!.Bond.Id);
    }

    [Fact]
    public async Task A_trainee_does_not_read_why()
    {
        await using var clinic = await TakenDownAsync(RemovalReason.Reaction, Until);
        await clinic.LayAsync(later =>
        {
            var visit = new Visit(Guid.CreateVersion7(), _scene.Client.Id, _scene.Salon.Id, _scene.Visit.ServiceKindId);
            visit.PutAt(
                [(Domain.Chairs.SegmentKind.HandsOn, 30)],
                later.Now + Duration.FromHours(2),
                _scene.Chair.Id,
                _scene.Trainee.Id,
                _scene.Salon,
                [Guid.CreateVersion7()]
            );
            later.Db.Visits.Add(visit);
        });

        var card = await clinic.UseAsync<CardSlice, CardSlice.Opened>(
            clinic.Acting(_scene.Trainee, _scene.Salon),
            s => s.OpenAsync(_scene.Client.Id, Cancellation)
        );

        Assert.Equal(new CardSlice.TakenDown(ChairScene.Today, null, Until), card.Screen!.TakenDown);
    }

    [Fact]
    public async Task A_bond_booked_before_that_day_is_doubted_and_one_on_it_is_not()
    {
        await using var clinic = await TakenDownAsync(RemovalReason.Rest, Until);

        Assert.Contains(Doubt.NoBondYet, (await BookAsync(clinic, Until.PlusDays(-1))).Doubts);
        Assert.DoesNotContain(Doubt.NoBondYet, (await BookAsync(clinic, Until)).Doubts);
        var agreed = await BookAsync(clinic, Until.PlusDays(-1), despite: true);
        Assert.NotNull(agreed.Booked);
        var view = await AsStylistAsync<Booking, Booking.ClientView?>(clinic, s => s.ClientAsync(_scene.Client.Id, Cancellation));
        Assert.Equal((Until, null), (view!.NoBondUntil, view.Due));
    }

    [Fact]
    public async Task Another_service_is_not_doubted_nor_a_head_that_is_bonded_again()
    {
        await using var clinic = await TakenDownAsync(RemovalReason.Rest, Until);
        var wash = await clinic.ReadAsync(db => Task.FromResult(db.ServiceKinds.First(k => k.Purpose == ServicePurpose.WashAndStyle).Id));
        Assert.DoesNotContain(Doubt.NoBondYet, (await BookAsync(clinic, Until.PlusDays(-1), service: wash)).Doubts);

        await clinic.LayAsync(later =>
            later.Db.Bonds.Add(
                new Bond(Guid.CreateVersion7(), _scene.Spare.Id, _scene.Client.Id, ChairScene.Today, null, Attachment.Tape, null)
            )
        );

        Assert.DoesNotContain(Doubt.NoBondYet, (await BookAsync(clinic, Until.PlusDays(-1))).Doubts);
        var view = await AsStylistAsync<Booking, Booking.ClientView?>(clinic, s => s.ClientAsync(_scene.Client.Id, Cancellation));
        Assert.Null(view!.NoBondUntil);
    }

    [Fact]
    public async Task A_walk_in_for_a_bond_wants_a_second_tap()
    {
        await using var clinic = await TakenDownAsync(RemovalReason.Rest, Until);
        var input = new Walk.Input { ClientId = _scene.Client.Id, ServiceKindId = _scene.Visit.ServiceKindId };

        Assert.Null((await WalkAsync(clinic, input)).Begun);
        Assert.NotNull((await WalkAsync(clinic, input with { Looked = true })).Begun);
    }

    [Fact]
    public async Task A_card_of_a_head_that_is_to_wait_for_nothing_says_only_when_it_came_off()
    {
        await using var clinic = await TakenDownAsync(RemovalReason.Leaving, until: null);

        var card = await AsStylistAsync<CardSlice, CardSlice.Opened>(clinic, s => s.OpenAsync(_scene.Client.Id, Cancellation));

        Assert.Equal(new CardSlice.TakenDown(ChairScene.Today, RemovalReason.Leaving, null), card.Screen!.TakenDown);
    }

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private async Task<TestClinic> TakenDownAsync(RemovalReason because, LocalDate? until)
    {
        var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                _scene.Lay(scene);
                _desk = scene.Hire("Dele Marsh", StaffRole.FrontDesk, _scene.Salon);
            }
        );
        await AsStylistAsync<Slice, Slice.Outcome>(
            clinic,
            async slice =>
            {
                var input = (await slice.OpenAsync(_scene.Visit.Id, Cancellation))!.Start;
                (input.Because, input.FoundLifted, input.NoBondUntil) = (because, false, until);
                return await slice.SaveAsync(Guid.CreateVersion7(), input, Cancellation);
            }
        );
        return clinic;
    }

    private Task<T> AsStylistAsync<TSlice, T>(TestClinic clinic, Func<TSlice, Task<T>> call)
        where TSlice : notnull => clinic.UseAsync(clinic.Acting(_scene.Stylist, _scene.Salon), call);

    private Task<Booking.Outcome> BookAsync(TestClinic clinic, LocalDate day, bool despite = false, Guid? service = null) =>
        AsStylistAsync<Booking, Booking.Outcome>(
            clinic,
            s =>
                s.SaveAsync(
                    Guid.CreateVersion7(),
                    new()
                    {
                        SalonId = _scene.Salon.Id,
                        ClientId = _scene.Client.Id,
                        ServiceKindId = service ?? _scene.Visit.ServiceKindId,
                        ChairId = _scene.Chair.Id,
                        PersonId = _scene.Stylist.Id,
                        Day = day,
                        Time = new LocalTime(11, 0),
                        DespiteDoubts = despite,
                    },
                    Cancellation
                )
        );

    private Task<Walk.Outcome> WalkAsync(TestClinic clinic, Walk.Input input) =>
        AsStylistAsync<Walk, Walk.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancellation));
}
