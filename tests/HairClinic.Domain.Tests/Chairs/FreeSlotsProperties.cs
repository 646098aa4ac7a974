using CsCheck;
using HairClinic.Domain.Chairs;
using NodaTime;

namespace HairClinic.Domain.Tests.Chairs;

public sealed class FreeSlotsProperties
{
    [Fact]
    public void The_slots_found_are_those_of_a_slow_search_of_everything() =>
        SlotFacts.Any.Sample(question => Assert.Equal(NaiveSlots.Find(question), FreeSlots.Find(question)), iter: 2_000);

    [Fact]
    public void No_slot_overlaps_a_booking_or_leaves_the_hours_of_salon_and_person() =>
        SlotFacts.Any.Sample(
            question =>
            {
                var slots = FreeSlots.Find(question);
                Assert.Equal(slots.Count, slots.DistinctBy(slot => slot.StartsAt).Count());
                Assert.True(slots.Count <= question.Best);
                foreach (var slot in slots)
                {
                    var chair = question.Chairs.Single(chair => chair.ChairId == slot.ChairId);
                    var person = question.People.Single(person => person.PersonId == slot.PersonId);
                    var whole = new OffsetInterval(Duration.Zero, slot.EndsAt - slot.StartsAt);
                    Assert.Equal(question.Service.Length, slot.EndsAt - slot.StartsAt);
                    Assert.True(slot.StartsAt >= question.From && slot.EndsAt <= question.To);
                    Assert.All(NaiveSlots.Ticks(whole, slot.StartsAt), at => Assert.True(NaiveSlots.In(question.Open, at)));
                    Assert.False(Meets(question.ClientBusy, whole, slot.StartsAt));
                    Assert.DoesNotContain(question.Service.Chair, block => Meets(chair.Busy, block, slot.StartsAt));
                    Assert.DoesNotContain(question.Service.Hands, block => Meets(person.Busy, block, slot.StartsAt));
                    Assert.All(
                        question.Service.Hands.SelectMany(block => NaiveSlots.Ticks(block, slot.StartsAt)),
                        at => Assert.True(NaiveSlots.In(person.Working, at))
                    );
                    Assert.All(question.SkillsNeeded, skill => Assert.Contains(skill, person.Skills));
                }
            },
            iter: 5_000
        );

    private static bool Meets(IReadOnlyList<Interval> busy, OffsetInterval block, Instant start) =>
        busy.Any(interval => interval.Start < start + block.To && interval.End > start + block.From);
}
