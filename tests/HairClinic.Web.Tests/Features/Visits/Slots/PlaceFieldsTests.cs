using Bunit;
using HairClinic.Web.Features.Visits.Slots;
using HairClinic.Web.Tests.Ui;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Visits.Slots;

public sealed class PlaceFieldsTests : UiTestContext
{
    private readonly Choice chair = new(Guid.CreateVersion7(), "Chair 1");
    private readonly Choice person = new(Guid.CreateVersion7(), "Mara");

    public PlaceFieldsTests() => BeInteractive();

    [Fact]
    public void Day_time_chair_and_person_are_chosen_by_hand()
    {
        var choice = new PlaceChoice();
        var fields = Render<PlaceFields>(p => p.Add(f => f.Choice, choice).Add(f => f.Chairs, [chair]).Add(f => f.People, [person]));

        fields.Find("input[type=date]").Change("2027-02-05");
        fields.Find("input[type=time]").Change("19:30");
        fields.Find("select[name=ChairId]").Change(chair.Id.ToString());
        fields.Find("select[name=PersonId]").Change(person.Id.ToString());

        Assert.Equal(
            (new LocalDate(2027, 2, 5), new LocalTime(19, 30), chair.Id, person.Id),
            (choice.Day, choice.Time, choice.ChairId, choice.PersonId)
        );
    }

    [Fact]
    public void What_is_missing_is_said_at_its_field()
    {
        var check = new PlaceChoiceRules().Validate(new PlaceChoice());

        var fields = Render<PlaceFields>(p =>
            p.Add(f => f.Choice, new PlaceChoice()).Add(f => f.Chairs, [chair]).Add(f => f.People, [person]).Add(f => f.Check, check)
        );

        Assert.Equal(
            ["Choose a day.", "Choose a time.", "Choose a chair.", "Choose who does it."],
            fields.FindAll(".errors li").Select(li => li.TextContent)
        );
    }

    [Fact]
    public void An_offered_slot_needs_neither_day_nor_time() =>
        Assert.True(
            new PlaceChoiceRules()
                .Validate(
                    new PlaceChoice
                    {
                        StartsAt = TestClinic.UsualNow,
                        ChairId = chair.Id,
                        PersonId = person.Id,
                    }
                )
                .IsValid
        );
}
