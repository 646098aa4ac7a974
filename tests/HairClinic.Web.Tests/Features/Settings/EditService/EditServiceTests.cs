using HairClinic.Domain.Chairs;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Features.Settings;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Settings.EditService;

namespace HairClinic.Web.Tests.Features.Settings.EditService;

public sealed class EditServiceTests(PgServer server) : PracticeTest(server)
{
    [Fact]
    public async Task A_new_service_is_one_step_with_hands_on()
    {
        await using var clinic = await OpenAsync();
        var input = (await OpenFormAsync(clinic, null)).Input;
        (input.Name, input.Purpose, input.PriceMinor) = ("Trim", ServicePurpose.Other, 4550);
        input.Steps[0].Minutes = 25;

        await SaveAsync(clinic, input);

        var saved = await clinic.ReadAsync(db => db.ServiceKinds.Include(k => k.Steps).SingleAsync(k => k.Name == "Trim", Cancel));
        Assert.Equal((SegmentKind.HandsOn, 25), (Assert.Single(saved.Steps).Kind, saved.Minutes));
        Assert.Equal((4550, "GBP"), (saved.PriceMinor, saved.Currency));
    }

    [Fact]
    public async Task A_service_with_waits_keeps_its_steps_when_renamed()
    {
        await using var clinic = await OpenAsync(scene =>
            scene
                .ServiceWithPurpose(ServicePurpose.FixLift)
                .SetSteps([(Guid.CreateVersion7(), SegmentKind.HandsOn, 15), (Guid.CreateVersion7(), SegmentKind.Wait, 10)])
        );
        var id = Scene.ServiceWithPurpose(ServicePurpose.FixLift).Id;
        var input = (await OpenFormAsync(clinic, id)).Input;
        input.Name = "Fix the front";

        await SaveAsync(clinic, input);

        Assert.Equal(
            [(SegmentKind.HandsOn, 15), (SegmentKind.Wait, 10)],
            (await OpenFormAsync(clinic, id)).Input.Steps.Select(s => (s.Kind, s.Minutes!.Value))
        );
    }

    [Fact]
    public async Task A_service_no_longer_offered_stays_in_the_book()
    {
        await using var clinic = await OpenAsync();
        var input = (await OpenFormAsync(clinic, Scene.ServiceWithPurpose(ServicePurpose.FixLift).Id)).Input;
        input.Retire = true;

        await SaveAsync(clinic, input);

        Assert.True(await clinic.ReadAsync(db => db.ServiceKinds.AnyAsync(k => k.Id == input.Id && k.Retired, Cancel)));
    }

    [Fact]
    public async Task The_later_of_two_edits_is_told_and_a_taken_name_is_refused()
    {
        await using var clinic = await OpenAsync();
        var id = Scene.ServiceWithPurpose(ServicePurpose.FixLift).Id;
        var mine = (await OpenFormAsync(clinic, id)).Input;
        var theirs = (await OpenFormAsync(clinic, id)).Input;
        theirs.Steps[0].Minutes = 35;
        await SaveAsync(clinic, theirs);

        await Assert.ThrowsAsync<OvertakenException>(() => SaveAsync(clinic, mine));
        mine = (await OpenFormAsync(clinic, id)).Input;
        mine.Name = "Rebond";
        await Refused.SayingAsync("There is a service called {0} already.", () => SaveAsync(clinic, mine));
    }

    [Theory]
    [InlineData(null)]
    [InlineData(4)]
    [InlineData(481)]
    public void A_length_no_chair_can_take_is_told(int? minutes)
    {
        var input = new Slice.Input { Name = "Trim", Steps = [new() { Minutes = minutes }] };

        Assert.Equal("Steps[0].Minutes", Assert.Single(new EditServiceRules().Validate(input).Errors).PropertyName);
    }

    private async Task<Slice.Screen> OpenFormAsync(TestClinic clinic, Guid? id) =>
        (await OwnerAsync<Slice, Slice.Screen?>(clinic, s => s.OpenAsync(id, Cancel)))!;

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        OwnerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
}
