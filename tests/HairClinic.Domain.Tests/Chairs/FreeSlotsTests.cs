using HairClinic.Domain.Chairs;
using NodaTime;

namespace HairClinic.Domain.Tests.Chairs;

public sealed class FreeSlotsTests
{
    private static readonly Guid Chair = new("00000000-0000-0000-0000-00000000000c");
    private static readonly Guid Ines = new("00000000-0000-0000-0000-00000000000a");
    private static readonly Guid Tomas = new("00000000-0000-0000-0000-00000000000b");
    private static readonly Guid Bonding = new("00000000-0000-0000-0000-0000000000ff");
    private static readonly Interval Day = From(9, 0, 18, 0);

    private static readonly ServiceTimeline Hour = new([new(SegmentKind.HandsOn, 60)]);

    private static readonly ServiceTimeline Rebond = new([
        new(SegmentKind.HandsOn, 60),
        new(SegmentKind.Wait, 30),
        new(SegmentKind.HandsOn, 30),
    ]);

    private static Instant At(int hour, int minute) => Instant.FromUtc(2026, 3, 3, hour, minute);

    private static Interval From(int hour, int minute, int toHour, int toMinute) => new(At(hour, minute), At(toHour, toMinute));

    private static PersonSchedule Person(Guid id, params Interval[] busy) => new(id, [Day], busy, new HashSet<Guid>());

    private static SlotQuery Ask(ServiceTimeline service, Instant target) =>
        new()
        {
            Service = service,
            From = At(0, 0),
            To = At(23, 0),
            Target = target,
            Open = [Day],
            Chairs = [new(Chair, [])],
            People = [Person(Ines)],
            NearEnough = Duration.Zero,
        };

    private static Instant First(SlotQuery question) => FreeSlots.Find(question)[0].StartsAt;

    [Fact]
    public void A_free_target_is_the_best_slot_and_the_next_lie_either_side_of_it()
    {
        var slots = FreeSlots.Find(Ask(Hour, At(12, 0)) with { Best = 3 });

        Assert.Equal([At(12, 0), At(11, 45), At(12, 15)], slots.Select(slot => slot.StartsAt));
        Assert.Equal(new(At(12, 0), At(13, 0), Chair, Ines, Duration.Zero, false, 4), slots[0]);
    }

    [Fact]
    public void A_visit_ends_before_the_salon_closes_and_inside_the_window()
    {
        Assert.Equal(At(17, 0), First(Ask(Hour, At(20, 0))));
        Assert.Equal(At(15, 0), First(Ask(Hour, At(20, 0)) with { To = At(16, 10) }));
        Assert.Equal(At(9, 0), First(Ask(Hour, At(7, 0))));
        Assert.Equal(At(9, 15), First(Ask(Hour, At(7, 0)) with { From = At(9, 1) }));
    }

    [Fact]
    public void A_booking_may_touch_another_but_not_overlap_it()
    {
        var question = Ask(Hour, At(11, 0)) with { Chairs = [new(Chair, [From(10, 0, 11, 0), From(12, 0, 13, 0)])] };

        Assert.Equal(At(11, 0), First(question));
        Assert.Equal(At(9, 0), First(question with { Target = At(10, 15), To = At(11, 59) }));
    }

    [Fact]
    public void A_stylist_takes_a_second_client_while_a_coat_dries()
    {
        // Busy only from 11:00 to 11:30: a rebond from 10:00 waits exactly then.
        var question = Ask(Rebond, At(10, 0)) with
        {
            People = [Person(Ines, From(11, 0, 11, 30))],
        };

        Assert.Equal(At(10, 0), First(question));
        Assert.NotEqual(At(10, 15), First(question with { Target = At(10, 15) }));
    }

    [Fact]
    public void The_chair_cannot_take_a_second_client_while_a_coat_dries()
    {
        var question = Ask(Rebond, At(10, 0)) with { Chairs = [new(Chair, [From(11, 0, 11, 30)])] };

        Assert.Equal(At(9, 0), First(question));
        Assert.Equal(At(11, 30), First(question with { From = At(9, 15) }));
    }

    [Fact]
    public void Hands_on_work_stays_inside_the_person_s_working_time()
    {
        var lateShift = new PersonSchedule(Ines, [From(13, 0, 18, 0)], [], new HashSet<Guid>());
        var lunch = new PersonSchedule(Ines, [From(9, 0, 12, 0), From(12, 30, 18, 0)], [], new HashSet<Guid>());

        Assert.Equal(At(13, 0), First(Ask(Hour, At(9, 0)) with { People = [lateShift] }));
        // Lunch falls into the wait.
        Assert.Equal(At(11, 0), First(Ask(Rebond, At(11, 0)) with { People = [lunch] }));
        Assert.NotEqual(At(11, 15), First(Ask(Rebond, At(11, 15)) with { People = [lunch] }));
    }

    [Fact]
    public void Only_people_with_every_skill_needed_are_offered()
    {
        var skilled = new PersonSchedule(Tomas, [Day], [], new HashSet<Guid> { Bonding });
        var question = Ask(Hour, At(12, 0)) with { SkillsNeeded = [Bonding] };

        Assert.All(FreeSlots.Find(question with { People = [Person(Ines), skilled] }), slot => Assert.Equal(Tomas, slot.PersonId));
        Assert.Empty(FreeSlots.Find(question));
    }

    [Fact]
    public void The_client_s_own_stylist_outweighs_a_few_hours_but_not_many()
    {
        var question = Ask(Hour, At(10, 0)) with
        {
            People = [Person(Ines, From(9, 0, 13, 0)), Person(Tomas)],
            PreferredPerson = Ines,
            NearEnough = Duration.FromHours(4),
        };

        Assert.Equal((At(13, 0), Ines, true), Head(question));
        Assert.Equal((At(10, 0), Tomas, false), Head(question with { NearEnough = Duration.Zero }));

        static (Instant, Guid, bool) Head(SlotQuery question) =>
            FreeSlots.Find(question)[0] is var slot ? (slot.StartsAt, slot.PersonId, slot.WithPreferred) : default;
    }

    [Fact]
    public void Of_near_slots_the_one_that_leaves_no_hole_in_the_day_is_best()
    {
        var question = Ask(Hour, At(14, 0)) with
        {
            Chairs = [new(Chair, [From(10, 0, 13, 15)])],
            People = [Person(Ines, From(10, 0, 13, 15))],
            NearEnough = Duration.FromHours(4),
            Best = 2,
        };

        var slots = FreeSlots.Find(question);

        Assert.Equal(At(13, 15), slots[0].StartsAt);
        Assert.Equal(2, slots[0].LooseEnds);
        // The last hour of the day borders on its end.
        Assert.Equal(At(17, 0), slots[1].StartsAt);
    }

    [Fact]
    public void A_full_day_offers_nothing() =>
        Assert.Empty(FreeSlots.Find(Ask(Hour, At(12, 0)) with { People = [Person(Ines, From(9, 30, 17, 30))] }));

    [Fact]
    public void A_search_without_sense_is_refused()
    {
        Assert.Throws<ArgumentException>(() => FreeSlots.Find(Ask(Hour, At(12, 0)) with { Step = Duration.Zero }));
        Assert.Throws<ArgumentException>(() => FreeSlots.Find(Ask(Hour, At(12, 0)) with { Best = 0 }));
    }
}
