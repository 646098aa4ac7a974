using System.Collections.Concurrent;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Demo.Scenes;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Visits.BookVisit;

namespace HairClinic.Web.Tests.Features.Visits.BookVisit;

/// <summary>Many hands at the same moment, on real PostgreSQL: its exclusion constraints decide, the dialog only tells.</summary>
public sealed class NoDoubleBookingTests(PgServer server)
{
    private static readonly LocalDate Thursday = VisitScene.Thursday;
    private readonly VisitScene _scene = new();

    [Fact]
    public async Task Of_two_at_the_same_moment_one_gets_the_chair_and_the_other_the_nearest_slots()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        var outcomes = await Task.WhenAll(
            BookAsync(clinic, Input(_scene.Wash, 0, _scene.Mara, At(11))),
            BookAsync(clinic, Input(_scene.Wash, 0, _scene.Ivo, At(11), _scene.Bo))
        );

        Assert.Single(outcomes, o => o.Booked is not null);
        var taken = Assert.Single(outcomes, o => o.Taken is not null).Taken!;
        Assert.Equal(SlotClash.Chair, taken.By);
        // The other chair at the very time, with whoever is free, then the quarters of an hour around it.
        Assert.Equal(At(11), taken.Nearest[0].StartsAt);
        Assert.Equal("Chair 2", taken.Nearest[0].Chair);
        Assert.Equal(6, taken.Nearest.Count);
        Assert.Equal(taken.Nearest.OrderBy(s => Distance(s.StartsAt)).Select(s => s.StartsAt), taken.Nearest.Select(s => s.StartsAt));
    }

    [Fact]
    public async Task What_the_loser_is_offered_can_be_booked()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                _scene.Lay(s);
                _scene.Book(s, _scene.Rebond, 0, _scene.Mara, At(11));
            }
        );
        var input = Input(_scene.Wash, 0, _scene.Mara, At(11), _scene.Bo);

        var offer = (await BookAsync(clinic, input)).Taken!.Nearest[0];
        var second = await BookAsync(clinic, input with { StartsAt = offer.StartsAt, ChairId = offer.ChairId, PersonId = offer.PersonId });

        Assert.NotNull(second.Booked);
    }

    [Fact]
    public async Task Hands_cannot_be_in_two_chairs()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        await BookAsync(clinic, Input(_scene.Wash, 0, _scene.Mara, At(11)));

        var second = await BookAsync(clinic, Input(_scene.Wash, 1, _scene.Mara, At(11, 15), _scene.Bo));

        Assert.Equal(SlotClash.Hands, second.Taken!.By);
        Assert.Equal("Ivo", second.Taken.Nearest[0].Person);
    }

    [Fact]
    public async Task Hands_are_free_for_another_chair_while_a_coat_dries()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                _scene.Lay(s);
                Quick(s);
            }
        );
        await BookAsync(clinic, Input(_scene.Coats, 0, _scene.Mara, At(11)));

        var second = await BookAsync(clinic, Input(_quick!, 1, _scene.Mara, At(11, 30), _scene.Bo));

        Assert.NotNull(second.Booked);
    }

    [Fact]
    public async Task Visits_back_to_back_both_stand()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);

        var first = await BookAsync(clinic, Input(_scene.Wash, 0, _scene.Mara, At(11)));
        var second = await BookAsync(clinic, Input(_scene.Wash, 0, _scene.Mara, At(11, 45)));

        Assert.NotNull(first.Booked);
        Assert.NotNull(second.Booked);
    }

    [Fact]
    public async Task The_same_tap_sent_many_times_at_once_books_once_and_gives_one_answer()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        var key = Guid.CreateVersion7();
        var input = Input(_scene.Wash, 0, _scene.Mara, At(11));

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => BookAsync(clinic, input, key)));
        var later = await BookAsync(clinic, input, key);

        Assert.Single(outcomes.Append(later).Select(o => o.Booked?.VisitId).Distinct());
        Assert.NotNull(later.Booked);
        Assert.Equal(1, await CountAsync(clinic));
    }

    /// <summary>Otherwise each would have written before it waits for the other, and PostgreSQL breaks one off only after a second.</summary>
    [Fact]
    public async Task Who_books_waits_for_who_is_booking_before_anything_is_written()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        await clinic.ReadAsync(async db =>
        {
            await using var first = await db.Database.BeginTransactionAsync(TestContext.Current.CancellationToken);
            _scene.Book(new Scene(db, clinic.Clock.GetCurrentInstant()), _scene.Wash, 0, _scene.Mara, At(11));
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
            var second = BookAsync(clinic, Input(_scene.Wash, 0, _scene.Ivo, At(11), _scene.Bo));

            await InTurnAsync(db, clinic.PracticeId);

            Assert.False(second.IsCompleted);
            await first.CommitAsync(TestContext.Current.CancellationToken);
            Assert.Equal(SlotClash.Chair, (await second).Taken!.By);
            return 0;
        });
    }

    [Fact]
    public async Task Two_hundred_attempts_on_fifty_slots_make_exactly_fifty_visits()
    {
        var five = new VisitScene(chairs: 5);
        List<Person> people = [];
        List<Client> clients = [];
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var attempts =
            from slot in Enumerable.Range(0, 10)
            from chair in Enumerable.Range(0, 5)
            from again in Enumerable.Range(0, 4)
            select new Slice.Input
            {
                SalonId = five.Salon.Id,
                ClientId = clients[(4 * chair) + again].Id,
                ServiceKindId = five.Wash.Id,
                ChairId = five.Chairs[chair].Id,
                PersonId = people[chair].Id,
                StartsAt = five.At(Thursday, 9) + Duration.FromMinutes(45 * slot),
            };
        var outcomes = new ConcurrentBag<Slice.Outcome>();

        await Parallel.ForEachAsync(
            attempts,
            new ParallelOptions { MaxDegreeOfParallelism = 32, CancellationToken = TestContext.Current.CancellationToken },
            async (input, _) =>
                outcomes.Add(
                    await clinic.UseAsync<Slice, Slice.Outcome>(
                        five.AtDesk(clinic),
                        slice => slice.SaveAsync(Guid.CreateVersion7(), input, TestContext.Current.CancellationToken)
                    )
                )
        );

        Assert.Equal(50, outcomes.Count(o => o.Booked is not null));
        Assert.Equal(150, outcomes.Count(o => o.Taken is not null));
        var places = await clinic.ReadAsync(db =>
            db.Visits.Where(v => v.HoldsChair).Select(v => new { v.ChairId, v.StartsAt }).ToListAsync(TestContext.Current.CancellationToken)
        );
        Assert.Equal(50, places.Count);
        Assert.Equal(50, places.Distinct().Count());

        void Lay(Scene s)
        {
            five.Lay(s);
            people = [.. Enumerable.Range(1, 5).Select(i => s.Hire($"Hand {i}", StaffRole.Stylist, five.Salon))];
            clients = [.. Enumerable.Range(1, 20).Select(i => s.AddClient($"N-{i}", $"Nora Wick {i}", five.Salon))];
        }
    }

    private ServiceKind? _quick;

    private void Quick(Scene s)
    {
        _quick = new ServiceKind(Guid.CreateVersion7(), "Quick look", ServicePurpose.Other);
        _quick.SetSteps([(Guid.CreateVersion7(), Domain.Chairs.SegmentKind.HandsOn, 15)]);
        s.Db.ServiceKinds.Add(_quick);
        _scene.Mara.SetSkills([.. _scene.Mara.Skills.Select(k => (k.Id, k.ServiceKindId)), (Guid.CreateVersion7(), _quick.Id)]);
    }

    private Instant At(int hour, int minute = 0) => _scene.At(Thursday, hour, minute);

    private Duration Distance(Instant start) => start > At(11) ? start - At(11) : At(11) - start;

    private Slice.Input Input(ServiceKind service, int chair, Person person, Instant at, Client? client = null) =>
        new()
        {
            SalonId = _scene.Salon.Id,
            ClientId = (client ?? _scene.Ada).Id,
            ServiceKindId = service.Id,
            ChairId = _scene.Chairs[chair].Id,
            PersonId = person.Id,
            StartsAt = at,
        };

    private Task<Slice.Outcome> BookAsync(TestClinic clinic, Slice.Input input, Guid? key = null) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            _scene.AtDesk(clinic),
            slice => slice.SaveAsync(key ?? Guid.CreateVersion7(), input, TestContext.Current.CancellationToken)
        );

    /// <summary>Until somebody waits for their turn in this practice.</summary>
    private static async Task InTurnAsync(ClinicDb db, Guid practice)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        patience.CancelAfter(TimeSpan.FromSeconds(20));
        var waits = db.Database.SqlQuery<bool>(
            $"""
            select exists (select from pg_locks where locktype = 'advisory' and not granted
                and (classid::bigint << 32) | objid::bigint = hashtextextended({"places of " + practice}, 0)) as "Value"
            """
        );
        while (!await waits.SingleAsync(patience.Token))
            await Task.Delay(20, patience.Token);
    }

    private static Task<int> CountAsync(TestClinic clinic) =>
        clinic.ReadAsync(db => db.Visits.CountAsync(TestContext.Current.CancellationToken));
}
