using HairClinic.Domain.Practices;
using NodaTime;

namespace HairClinic.Domain.Tests.Practices;

public sealed class PersonTests
{
    private static readonly Guid Elm = Guid.CreateVersion7();
    private static readonly Guid Quay = Guid.CreateVersion7();
    private static readonly LocalDate Day = new(2027, 2, 3);
    private readonly Person _person = new(Guid.CreateVersion7(), " Mara Quill ", StaffRole.Stylist);

    [Theory]
    [InlineData(StaffRole.Owner, true)]
    [InlineData(StaffRole.Stylist, true)]
    [InlineData(StaffRole.Trainee, true)]
    [InlineData(StaffRole.Manager, false)]
    [InlineData(StaffRole.FrontDesk, false)]
    public void Clients_are_booked_with_whoever_works_at_the_chair_and_may_do_something_alone(StaffRole role, bool takes)
    {
        _person.Edit("Mara Quill", role);
        Assert.False(_person.TakesClients);

        _person.SetSkills([(Guid.CreateVersion7(), Guid.CreateVersion7())]);

        Assert.Equal(takes, _person.TakesClients);
    }

    [Fact]
    public void Salons_that_stay_keep_their_row_others_go_and_new_ones_come()
    {
        var (first, second, third) = (Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7());
        _person.SetSalons([(first, Elm), (second, Quay)]);
        Assert.All(_person.Salons, s => Assert.Equal(_person.Id, s.PersonId));

        var harbour = Guid.CreateVersion7();
        _person.SetSalons([(Guid.CreateVersion7(), Quay), (third, harbour)]);

        Assert.Equal([(second, Quay), (third, harbour)], _person.Salons.Select(s => (s.Id, s.SalonId)));
        _person.SetSalons([]);
        Assert.Empty(_person.Salons);
    }

    [Fact]
    public void Skills_that_stay_keep_their_row_others_go_and_new_ones_come()
    {
        var (rebond, wash, colour) = (Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7());
        var (first, second, third) = (Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7());
        _person.SetSkills([(first, rebond), (second, wash)]);

        _person.SetSkills([(Guid.CreateVersion7(), wash), (third, colour)]);

        Assert.Equal([(second, wash), (third, colour)], _person.Skills.Select(s => (s.Id, s.ServiceKindId)));
        Assert.All(_person.Skills, s => Assert.Equal(_person.Id, s.PersonId));
    }

    [Fact]
    public void Working_hours_are_replaced_as_a_whole_and_a_spell_that_ends_before_it_starts_changes_nothing()
    {
        _person.SetWorkingHours([(Guid.CreateVersion7(), Elm, IsoDayOfWeek.Monday, new(9, 0), new(17, 0))]);
        _person.SetWorkingHours([(Guid.CreateVersion7(), Quay, IsoDayOfWeek.Friday, new(10, 0), new(10, 1))]);

        Refused.Saying(
            "Working hours must end after they start.",
            () => _person.SetWorkingHours([(Guid.CreateVersion7(), Elm, IsoDayOfWeek.Monday, new(9, 0), new(9, 0))])
        );

        var spell = Assert.Single(_person.WorkSpells);
        Assert.Equal(
            (Quay, IsoDayOfWeek.Friday, new LocalTime(10, 0), new LocalTime(10, 1)),
            (spell.SalonId, spell.Day, spell.From, spell.To)
        );
    }

    [Fact]
    public void An_absence_may_be_one_day_long_ends_no_earlier_than_it_starts_and_can_be_taken_back()
    {
        var (one, other) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        _person.AddAbsence(one, Day, Day, "Course");
        _person.AddAbsence(other, Day.PlusDays(7), Day.PlusDays(9), "Leave");

        Refused.Saying(
            "The absence ends before it starts.",
            () => _person.AddAbsence(Guid.CreateVersion7(), Day, Day.PlusDays(-1), "Leave")
        );
        Assert.Equal(2, _person.Absences.Count);

        _person.RemoveAbsence(one);
        var left = Assert.Single(_person.Absences);
        Assert.Equal((other, Day.PlusDays(7), Day.PlusDays(9), "Leave"), (left.Id, left.From, left.To, left.Reason));
    }

    [Fact]
    public void Who_left_has_left()
    {
        Assert.Equal(("Mara Quill", false), (_person.Name, _person.Left));

        _person.Leave();

        Assert.True(_person.Left);
    }
}
