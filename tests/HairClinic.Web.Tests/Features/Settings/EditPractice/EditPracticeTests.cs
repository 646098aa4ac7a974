using HairClinic.Domain.Chairs;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Features.Settings;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Slice = HairClinic.Web.Features.Settings.EditPractice;

namespace HairClinic.Web.Tests.Features.Settings.EditPractice;

public sealed class EditPracticeTests(PgServer server) : PracticeTest(server)
{
    private Person _there = null!;

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

    [Fact]
    public async Task Fewer_days_after_a_visit_close_the_record_to_the_other_salon_at_once()
    {
        Client client = null!;
        await using var clinic = await OpenAsync(scene =>
        {
            client = scene.AddClient("C-1", "Ada Fenwick", Salon);
            var visit = new Visit(Guid.CreateVersion7(), client.Id, Other.Id, scene.Services[0].Id);
            var chair = scene.Chairs.Single(c => c.SalonId == Other.Id).Id;
            visit.PutAt([(SegmentKind.HandsOn, 60)], scene.Now - Duration.FromDays(20), chair, Owner.Id, Other, [Guid.CreateVersion7()]);
            scene.Db.Visits.Add(visit);
            _there = scene.Hire("Ilex Moor", StaffRole.Stylist, Other);
        });
        Assert.True(await SeesAsync(clinic, client));

        await KeepAsync(clinic, 10);
        Assert.False(await SeesAsync(clinic, client));

        await KeepAsync(clinic, 21);
        Assert.True(await SeesAsync(clinic, client));
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
            GrantDaysAfterVisit = 90,
            DaysBeforeEvent = 5,
            CelebrationSoundPercent = 99,
            JourneySoundPercent = 90,
            OpeningSoonDays = 7,
            SlotMinutes = 15,
            PreparationDays = 14,
            GapChancePercent = 5,
        };

        Assert.Equal(nameof(Slice.Input.CureHours), Assert.Single(new EditPracticeRules().Validate(input).Errors).PropertyName);
    }

    private async Task KeepAsync(TestClinic clinic, int days)
    {
        var input = await OpenFormAsync(clinic);
        input.GrantDaysAfterVisit = days;
        await SaveAsync(clinic, input);
    }

    [Fact]
    public async Task For_how_long_a_visit_opens_a_record_is_not_a_managers_to_say()
    {
        await using var clinic = await OpenAsync();
        var input = await OpenFormAsync(clinic);
        input.GrantDaysAfterVisit = 730;

        await Refused.SayingAsync("Only an owner changes for how long a visit opens a record to another salon.", () => ManageAsync(input));
        input.GrantDaysAfterVisit = 90;
        input.Name = "Practice renamed";
        await ManageAsync(input);

        Assert.Equal(("Practice renamed", 90), ((await OpenFormAsync(clinic)).Name, (await OpenFormAsync(clinic)).GrantDaysAfterVisit));

        Task<Slice.Outcome> ManageAsync(Slice.Input sent) =>
            ManagerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), sent, Cancel));
    }

    private Task<bool> SeesAsync(TestClinic clinic, Client client) =>
        clinic.AsAsync(
            clinic.Acting(_there, Other),
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                return await db.Clients.AnyAsync(c => c.Id == client.Id, Cancel);
            }
        );

    private Task<Slice.Input> OpenFormAsync(TestClinic clinic) => OwnerAsync<Slice, Slice.Input>(clinic, s => s.OpenAsync(Cancel));

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        OwnerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
}
