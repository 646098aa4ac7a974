using HairClinic.Web.Data.Writes;
using HairClinic.Web.Features.Practices.Rhythm;
using Slice = HairClinic.Web.Features.Practices.Rhythm.Rhythm;

namespace HairClinic.Web.Tests.Features.Practices.Rhythm;

public sealed class RhythmTests(PgServer server) : PracticeTest(server)
{
    [Fact]
    public async Task A_longer_cure_moves_due_dates_a_new_name_does_not()
    {
        await using var clinic = await OpenAsync();
        var renamed = await OpenFormAsync(clinic);
        renamed.Name = "Practice renamed";
        await SaveAsync(clinic, renamed);
        Assert.Equal(0, await RefreshesAsync(clinic));
        var slower = await OpenFormAsync(clinic);
        slower.CureHours = 36;

        await SaveAsync(clinic, slower);

        Assert.Equal(1, await RefreshesAsync(clinic));
        Assert.Equal(("Practice renamed", 36), ((await OpenFormAsync(clinic)).Name, (await OpenFormAsync(clinic)).CureHours));
    }

    [Fact]
    public async Task The_later_of_two_edits_is_told()
    {
        await using var clinic = await OpenAsync();
        var mine = await OpenFormAsync(clinic);
        var theirs = await OpenFormAsync(clinic);
        theirs.SlotMinutes = 30;
        await SaveAsync(clinic, theirs);

        await Assert.ThrowsAsync<OvertakenException>(() => SaveAsync(clinic, mine));
    }

    [Theory]
    [InlineData(23)]
    [InlineData(49)]
    [InlineData(null)]
    public void A_cure_outside_24_to_48_hours_is_told(int? hours)
    {
        var input = new Slice.Input
        {
            Name = "Practice",
            CureHours = hours,
            ClientMoveHours = 24,
            DaysBeforeEvent = 5,
            OpeningSoonDays = 7,
            SlotMinutes = 15,
        };

        Assert.Equal(nameof(Slice.Input.CureHours), Assert.Single(new RhythmRules().Validate(input).Errors).PropertyName);
    }

    private Task<Slice.Input> OpenFormAsync(TestClinic clinic) => OwnerAsync<Slice, Slice.Input>(clinic, s => s.OpenAsync(Cancel));

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        OwnerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
}
