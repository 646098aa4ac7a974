using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Features.Visits;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Visits.MoveVisit;

namespace HairClinic.Web.Tests.Features.Visits.MoveVisit;

public sealed class MoveVisitTests(PgServer server)
{
    private static readonly LocalDate Thursday = VisitScene.Thursday;
    private readonly VisitScene _scene = new();
    private Visit _visit = null!;

    [Fact]
    public async Task A_visit_moves_a_little_although_it_overlaps_where_it_was()
    {
        await using var clinic = await OpenAsync();

        var outcome = await MoveAsync(clinic, await InputAsync(clinic, new LocalTime(9, 15)));

        var moved = await VisitScene.ReadAsync(clinic, _visit.Id);
        Assert.Equal(_scene.At(Thursday, 9, 15), moved.StartsAt);
        Assert.Equal(outcome.Moved!.EndsAt, moved.EndsAt);
        Assert.Equal(3, moved.Segments.Count);
        Assert.Equal(moved.EndsAt, moved.Segments.Max(s => s.EndsAt));
    }

    [Fact]
    public async Task Its_old_time_is_free_at_once()
    {
        await using var clinic = await OpenAsync();
        await MoveAsync(clinic, await InputAsync(clinic, new LocalTime(14, 0)));

        await clinic.LayAsync(s => _scene.Book(s, _scene.Rebond, 0, _scene.Mara, _scene.At(Thursday, 9)));

        Assert.Equal(2, await clinic.ReadAsync(db => db.Visits.CountAsync(TestContext.Current.CancellationToken)));
    }

    [Fact]
    public async Task Free_times_come_in_the_order_of_time()
    {
        await using var clinic = await OpenAsync();

        var screen = await clinic.UseAsync<Slice, Slice.Screen?>(
            _scene.AtDesk(clinic),
            slice => slice.OpenAsync(_visit.Id, TestContext.Current.CancellationToken)
        );
        var ask = new SlotRequest(_scene.Salon.Id, _scene.Salon.TimeZone, screen!.ServiceKindId, screen.Steps, Thursday, WithinDays: 7)
        {
            ClientId = screen.ClientId,
            ButVisit = _visit.Id,
        };
        var free = await clinic.UseAsync<Slice, IReadOnlyList<SlotOffer>>(
            _scene.AtDesk(clinic),
            slice => slice.FindSlotsAsync(ask, TestContext.Current.CancellationToken)
        );

        Assert.True(free.Select(s => s.StartsOn).Distinct().Count() > 1);
        Assert.Equal(free.OrderBy(s => s.StartsAt), free);
    }

    [Fact]
    public async Task A_taken_place_is_told_with_the_nearest_free_ones_and_nothing_moves()
    {
        await using var clinic = await OpenAsync();
        await clinic.LayAsync(s => _scene.Book(s, _scene.Rebond, 0, _scene.Ivo, _scene.At(Thursday, 14), _scene.Bo));

        var outcome = await MoveAsync(clinic, await InputAsync(clinic, new LocalTime(14, 0)));

        Assert.Equal(SlotClash.Chair, outcome.Taken!.By);
        Assert.Equal((_scene.At(Thursday, 14), "Chair 2"), (outcome.Taken.Nearest[0].StartsAt, outcome.Taken.Nearest[0].Chair));
        Assert.Equal(_scene.At(Thursday, 9), (await VisitScene.ReadAsync(clinic, _visit.Id)).StartsAt);
    }

    [Fact]
    public async Task Of_two_who_move_the_same_visit_the_second_is_told_and_overwrites_nothing()
    {
        await using var clinic = await OpenAsync();
        var (mine, theirs) = (await InputAsync(clinic, new LocalTime(14, 0)), await InputAsync(clinic, new LocalTime(11, 0)));

        await MoveAsync(clinic, mine);

        await Assert.ThrowsAsync<OvertakenException>(() => MoveAsync(clinic, theirs));
        Assert.Equal(_scene.At(Thursday, 14), (await VisitScene.ReadAsync(clinic, _visit.Id)).StartsAt);
    }

    [Fact]
    public async Task Of_many_who_move_it_at_the_same_moment_one_wins()
    {
        await using var clinic = await OpenAsync();
        var inputs = new List<Slice.Input>();
        for (var hour = 10; hour < 16; hour++)
            inputs.Add(await InputAsync(clinic, new LocalTime(hour, 0)));

        var won = await Task.WhenAll(
            inputs.Select(async input =>
            {
                try
                {
                    return (await MoveAsync(clinic, input)).Moved;
                }
                catch (OvertakenException)
                {
                    return null;
                }
            })
        );

        var winner = Assert.Single(won, w => w is not null);
        Assert.Equal(winner!.StartsAt, (await VisitScene.ReadAsync(clinic, _visit.Id)).StartsAt);
    }

    [Fact]
    public async Task A_time_outside_opening_hours_is_doubted_first()
    {
        await using var clinic = await OpenAsync();

        Assert.Equal([Doubt.OutsideOpeningHours], (await MoveAsync(clinic, await InputAsync(clinic, new LocalTime(20, 0)))).Doubts);
    }

    [Fact]
    public async Task A_visit_called_off_stays_where_it_was()
    {
        await using var clinic = await OpenAsync();
        await clinic.ReadAsync(async db =>
        {
            (await db.Visits.Include(v => v.Segments).SingleAsync(TestContext.Current.CancellationToken)).Cancel();
            return await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        });

        await Refused.SayingAsync(
            "This visit is {0}: it cannot be moved.",
            async () => await MoveAsync(clinic, await InputAsync(clinic, new LocalTime(14, 0)))
        );
    }

    [Fact]
    public async Task The_screen_says_where_it_stands_and_who_is_not_of_the_salon_sees_nothing()
    {
        await using var clinic = await OpenAsync();

        var screen = await ScreenAsync(clinic);
        var stranger = await clinic.UseAsync<Slice, Slice.Screen?>(
            clinic.Acting(_scene.Desk),
            slice => slice.OpenAsync(_visit.Id, TestContext.Current.CancellationToken)
        );

        Assert.Equal(("Ada Fenwick", "Two coats", 60), (screen.Client, screen.Service, screen.Steps.Sum(s => s.Minutes)));
        Assert.True(screen.IsOpen);
        Assert.Null(stranger);
    }

    private Task<TestClinic> OpenAsync() =>
        TestClinic.OpenAsync(
            server,
            s =>
            {
                _scene.Lay(s);
                _visit = _scene.Book(s, _scene.Coats, 0, _scene.Mara, _scene.At(Thursday, 9));
            }
        );

    private async Task<Slice.Screen> ScreenAsync(TestClinic clinic) =>
        (
            await clinic.UseAsync<Slice, Slice.Screen?>(
                _scene.AtDesk(clinic),
                slice => slice.OpenAsync(_visit.Id, TestContext.Current.CancellationToken)
            )
        )!;

    private async Task<Slice.Input> InputAsync(TestClinic clinic, LocalTime time) =>
        new()
        {
            VisitId = _visit.Id,
            Version = (await ScreenAsync(clinic)).Version,
            ChairId = _scene.Chairs[0].Id,
            PersonId = _scene.Mara.Id,
            Day = Thursday,
            Time = time,
        };

    private Task<Slice.Outcome> MoveAsync(TestClinic clinic, Slice.Input input) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            _scene.AtDesk(clinic),
            slice => slice.SaveAsync(Guid.CreateVersion7(), input, TestContext.Current.CancellationToken)
        );
}
