using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Features.Settings;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Settings.EditPerson;

namespace HairClinic.Web.Tests.Features.Settings.EditPerson;

public sealed class EditPersonTests(PgServer server) : PracticeTest(server)
{
    [Fact]
    public async Task Salons_skills_hours_and_days_away_come_back_as_they_were_saved()
    {
        await using var clinic = await OpenAsync();
        var input = (await OpenFormAsync(clinic, Stylist.Id)).Input;
        input.Salons.Add(Other.Id);
        input.Skills.RemoveAt(0);
        var tuesday = input.Work.Single(w => w.SalonId == Other.Id).Days[1];
        (tuesday.From, tuesday.To) = (new LocalTime(10, 0), new LocalTime(16, 0));
        input.Absences.Add(
            new DaysOffInput
            {
                From = new LocalDate(2027, 5, 3),
                To = new LocalDate(2027, 5, 9),
                Reason = "Holiday",
            }
        );

        await SaveAsync(clinic, input);

        var again = (await OpenFormAsync(clinic, Stylist.Id)).Input;
        Assert.Equivalent(input.Salons, again.Salons);
        Assert.Equivalent(input.Skills, again.Skills);
        Assert.Equal(tuesday, again.Work.Single(w => w.SalonId == Other.Id).Days[1]);
        Assert.Equal("Holiday", Assert.Single(again.Absences).Reason);
    }

    [Fact]
    public async Task Only_an_owner_gives_someone_another_role()
    {
        await using var clinic = await OpenAsync();
        var input = (await OpenFormAsync(clinic, Stylist.Id)).Input;
        input.Role = StaffRole.Manager;

        await Refused.SayingAsync(
            "Only an owner gives people their roles.",
            () => ManagerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel))
        );
        await SaveAsync(clinic, input);

        Assert.Equal(
            StaffRole.Manager,
            await clinic.ReadAsync(db => db.People.Where(p => p.Id == Stylist.Id).Select(p => p.Role).SingleAsync(Cancel))
        );
    }

    [Fact]
    public async Task A_manager_neither_sees_nor_changes_an_owner()
    {
        await using var clinic = await OpenAsync();
        var input = (await OpenFormAsync(clinic, Owner.Id)).Input;

        Assert.Null(await ManagerAsync<Slice, Slice.Screen?>(clinic, s => s.OpenAsync(Owner.Id, Cancel)));
        await Refused.SayingAsync(
            "Only an owner changes owners and managers.",
            () => ManagerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel))
        );
    }

    [Fact]
    public async Task The_last_owner_can_neither_leave_nor_become_anything_else()
    {
        await using var clinic = await OpenAsync();
        var leaving = (await OpenFormAsync(clinic, Owner.Id)).Input;
        leaving.Retire = true;
        var demoted = (await OpenFormAsync(clinic, Owner.Id)).Input;
        demoted.Role = StaffRole.Stylist;

        await Refused.SayingAsync("A practice has at least one owner. Make someone else an owner first.", () => SaveAsync(clinic, leaving));
        await Refused.SayingAsync("A practice has at least one owner. Make someone else an owner first.", () => SaveAsync(clinic, demoted));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Leaving_or_another_role_ends_what_they_have_open(bool leaves)
    {
        await using var clinic = await OpenAsync();
        await clinic.ReadAsync(async db =>
        {
            var name = $"sten-{clinic.PracticeId:N}";
            db.Users.Add(
                new AppUser
                {
                    Id = Guid.CreateVersion7(),
                    PracticeId = clinic.PracticeId,
                    PersonId = Stylist.Id,
                    UserName = name,
                    NormalizedUserName = name.ToUpperInvariant(),
                    SecurityStamp = "before",
                }
            );
            return await db.SaveChangesAsync(Cancel);
        });
        var input = (await OpenFormAsync(clinic, Stylist.Id)).Input;
        if (leaves)
            input.Retire = true;
        else
            input.Role = StaffRole.FrontDesk;

        await SaveAsync(clinic, input);

        Assert.NotEqual(
            "before",
            await clinic.ReadAsync(db => db.Users.Where(u => u.PersonId == Stylist.Id).Select(u => u.SecurityStamp).SingleAsync(Cancel))
        );
    }

    [Fact]
    public async Task The_later_of_two_edits_is_told()
    {
        await using var clinic = await OpenAsync();
        var mine = (await OpenFormAsync(clinic, Stylist.Id)).Input;
        var theirs = (await OpenFormAsync(clinic, Stylist.Id)).Input;
        theirs.Skills.Clear();
        await SaveAsync(clinic, theirs);
        mine.Name = "Sten Itoh";

        await Assert.ThrowsAsync<OvertakenException>(() => SaveAsync(clinic, mine));
    }

    [Fact]
    public async Task A_manager_makes_nobody_at_home_in_a_salon_they_do_not_work_in_not_even_themselves()
    {
        await using var clinic = await OpenAsync(scene => scene.AddClient("C-1", "Ada Fenwick", Other));
        var input = (await OpenFormAsync(clinic, Manager.Id)).Input;
        input.Salons.Add(Other.Id);
        var newcomer = new Slice.Input
        {
            Name = "Newt Asher",
            Role = StaffRole.Stylist,
            Salons = [Other.Id],
        };

        foreach (var tried in new[] { input, newcomer })
        {
            var refusal = await Assert.ThrowsAsync<Refusal>(() =>
                ManagerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), tried, Cancel))
            );
            Assert.Equal("Who works in a salon is for a manager there, or an owner, to say.", refusal.Message);
        }
        newcomer.Salons = [Salon.Id];
        await ManagerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), newcomer, Cancel));
        await SaveAsync(clinic, input);
    }

    private async Task<Slice.Screen> OpenFormAsync(TestClinic clinic, Guid? id) =>
        (await OwnerAsync<Slice, Slice.Screen?>(clinic, s => s.OpenAsync(id, Cancel)))!;

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        OwnerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
}
