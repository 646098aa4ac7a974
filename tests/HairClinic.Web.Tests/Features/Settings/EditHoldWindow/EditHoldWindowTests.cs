using HairClinic.Domain.Bonding;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Features.Settings;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Settings.EditHoldWindow;

namespace HairClinic.Web.Tests.Features.Settings.EditHoldWindow;

public sealed class EditHoldWindowTests(PgServer server) : PracticeTest(server)
{
    private Guid ForAnything => Scene.HoldWindows.Single(w => w is { BaseMaterialId: null, Attachment: null }).Id;

    private Guid ForTape => Scene.HoldWindows.Single(w => w.Attachment == Attachment.Tape).Id;

    [Fact]
    public async Task Another_window_moves_due_dates()
    {
        await using var clinic = await OpenAsync();
        var input = (await OpenFormAsync(clinic, ForAnything)).Input;
        (input.EarliestWeeks, input.LatestWeeks) = (3, 5);

        await SaveAsync(clinic, input);

        Assert.Equal(1, await RefreshesAsync(clinic));
        var again = (await OpenFormAsync(clinic, ForAnything)).Input;
        Assert.Equal((3, 5), (again.EarliestWeeks, again.LatestWeeks));
    }

    [Fact]
    public async Task The_window_for_everything_neither_goes_nor_becomes_narrower()
    {
        await using var clinic = await OpenAsync();
        var taken = (await OpenFormAsync(clinic, ForAnything)).Input;
        taken.Retire = true;
        var narrowed = (await OpenFormAsync(clinic, ForAnything)).Input;
        narrowed.Attachment = Attachment.Clips;

        await Refused.SayingAsync(
            "This window stands for everything no other names. Its weeks can change, but it stays.",
            () => SaveAsync(clinic, taken)
        );
        await Refused.SayingAsync(
            "This window stands for everything no other names. Its weeks can change, but it stays.",
            () => SaveAsync(clinic, narrowed)
        );
        Assert.Equal(0, await RefreshesAsync(clinic));
    }

    [Fact]
    public async Task Another_window_can_go_and_a_second_one_for_the_same_is_refused()
    {
        await using var clinic = await OpenAsync();
        var second = (await OpenFormAsync(clinic, null)).Input;
        second.Attachment = Attachment.Tape;
        await Refused.SayingAsync(
            "There is a window for this base, adhesive and attachment already. Change that one.",
            () => SaveAsync(clinic, second)
        );
        var tape = (await OpenFormAsync(clinic, ForTape)).Input;
        tape.Retire = true;

        await SaveAsync(clinic, tape);

        Assert.False(await clinic.ReadAsync(db => db.HoldWindowRules.AnyAsync(r => r.Attachment == Attachment.Tape, Cancel)));
    }

    [Fact]
    public async Task The_later_of_two_edits_is_told()
    {
        await using var clinic = await OpenAsync();
        var mine = (await OpenFormAsync(clinic, ForTape)).Input;
        var theirs = (await OpenFormAsync(clinic, ForTape)).Input;
        theirs.LatestWeeks = 5;
        await SaveAsync(clinic, theirs);

        await Assert.ThrowsAsync<OvertakenException>(() => SaveAsync(clinic, mine));
    }

    [Theory]
    [InlineData(0, 4)]
    [InlineData(5, 4)]
    [InlineData(4, 27)]
    public void Weeks_that_make_no_window_are_told(int earliest, int latest) =>
        Assert.NotEmpty(new EditHoldWindowRules().Validate(new Slice.Input { EarliestWeeks = earliest, LatestWeeks = latest }).Errors);

    private async Task<Slice.Screen> OpenFormAsync(TestClinic clinic, Guid? id) =>
        (await OwnerAsync<Slice, Slice.Screen?>(clinic, s => s.OpenAsync(id, Cancel)))!;

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        OwnerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
}
