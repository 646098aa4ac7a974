using Bunit;
using HairClinic.Web.Features.Visits;
using HairClinic.Web.Tests.Ui;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Visits.Slots;

public sealed class PlacementFieldsTests : UiTestContext
{
    private readonly Choice _chair = new(Guid.CreateVersion7(), "Chair 1");
    private readonly Choice _person = new(Guid.CreateVersion7(), "Mara");

    public PlacementFieldsTests() => BeInteractive();

    [Fact]
    public void Day_time_chair_and_person_are_chosen_by_hand()
    {
        var choice = new PlacementInput();
        var fields = Render<PlacementFields>(p => p.Add(f => f.Choice, choice).Add(f => f.Chairs, [_chair]).Add(f => f.People, [_person]));

        fields.Find("input[type=date]").Change("2027-02-05");
        fields.Find("input[type=time]").Change("19:30");
        fields.Find("select[name=ChairId]").Change(_chair.Id.ToString());
        fields.Find("select[name=PersonId]").Change(_person.Id.ToString());

        Assert.Equal(
            (new LocalDate(2027, 2, 5), new LocalTime(19, 30), _chair.Id, _person.Id),
            (choice.Day, choice.Time, choice.ChairId, choice.PersonId)
        );
    }

    [Fact]
    public void What_is_missing_is_said_at_its_field()
    {
        var check = new PlacementInputRules().Validate(new PlacementInput());

        var fields = Render<PlacementFields>(p =>
            p.Add(f => f.Choice, new PlacementInput()).Add(f => f.Chairs, [_chair]).Add(f => f.People, [_person]).Add(f => f.Check, check)
        );

        Assert.Equal(
            ["Choose a day.", "Choose a time.", "Choose a chair.", "Choose who does it."],
            fields.FindAll(".errors li").Select(li => li.TextContent)
        );
    }

    [Fact]
    public void An_offered_slot_needs_neither_day_nor_time() =>
        Assert.True(
            new PlacementInputRules()
                .Validate(
                    new PlacementInput
                    {
                        StartsAt = TestClinic.UsualNow,
                        ChairId = _chair.Id,
                        PersonId = _person.Id,
                    }
                )
                .IsValid
        );
}
