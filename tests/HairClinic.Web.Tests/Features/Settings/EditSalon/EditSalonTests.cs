using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Features.Settings;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Settings.EditSalon;

namespace HairClinic.Web.Tests.Features.Settings.EditSalon;

public sealed class EditSalonTests(PgServer server) : PracticeTest(server)
{
    [Fact]
    public async Task A_salon_can_open_twice_a_day_and_shut_for_a_week()
    {
        await using var clinic = await OpenAsync();
        var input = await OpenFormAsync(clinic, Salon.Id);
        var monday = input.Hours[0];
        (monday.From, monday.To) = (new LocalTime(9, 0), new LocalTime(12, 0));
        (monday.SecondFrom, monday.SecondTo) = (new LocalTime(14, 0), new LocalTime(19, 0));
        input.Closures.Add(
            new DaysOffInput
            {
                From = new LocalDate(2027, 3, 1),
                To = new LocalDate(2027, 3, 7),
                Reason = "Painting",
            }
        );

        await SaveAsync(clinic, input);

        var again = await OpenFormAsync(clinic, Salon.Id);
        Assert.Equal(input.Hours, again.Hours);
        Assert.Equal("Painting", Assert.Single(again.Closures).Reason);
        Assert.Equal(7, await clinic.ReadAsync(db => db.SalonHours.CountAsync(h => h.SalonId == Salon.Id, Cancel)));
    }

    [Fact]
    public async Task Due_dates_are_worked_out_anew_when_hours_or_closures_change_and_not_for_a_new_name()
    {
        await using var clinic = await OpenAsync();
        var renamed = await OpenFormAsync(clinic, Salon.Id);
        renamed.Name = "Elm Row North";
        await SaveAsync(clinic, renamed);
        Assert.Equal(0, await RefreshesAsync(clinic));

        var closed = await OpenFormAsync(clinic, Salon.Id);
        closed.Closures.Add(new DaysOffInput { From = new LocalDate(2027, 3, 1), To = new LocalDate(2027, 3, 1) });
        await SaveAsync(clinic, closed);

        Assert.Equal(1, await RefreshesAsync(clinic));
    }

    [Fact]
    public async Task The_later_of_two_edits_is_told_even_when_only_hours_changed()
    {
        await using var clinic = await OpenAsync();
        var mine = await OpenFormAsync(clinic, Salon.Id);
        var theirs = await OpenFormAsync(clinic, Salon.Id);
        theirs.Hours[1].To = new LocalTime(20, 0);
        await SaveAsync(clinic, theirs);
        mine.Hours[1].To = new LocalTime(17, 0);

        await Assert.ThrowsAsync<OvertakenException>(() => SaveAsync(clinic, mine));

        Assert.Equal(new LocalTime(20, 0), (await OpenFormAsync(clinic, Salon.Id)).Hours[1].To);
    }

    [Fact]
    public async Task Its_phone_is_read_in_the_country_of_the_time_zone_in_the_form()
    {
        await using var clinic = await OpenAsync();
        var input = await OpenFormAsync(clinic, null);
        (input.Name, input.Zone, input.Currency, input.Phone) = ("Pier", "America/New_York", "USD", "(518) 555-0146");

        var outcome = await SaveAsync(clinic, input);

        Assert.Equal(
            "+15185550146",
            await clinic.ReadAsync(db => db.Salons.Where(s => s.Id == outcome.SalonId).Select(s => s.Phone).SingleAsync(Cancel))
        );
    }

    [Fact]
    public async Task A_phone_that_cannot_be_rung_is_told_at_its_field()
    {
        await using var clinic = await OpenAsync();
        var input = await OpenFormAsync(clinic, Salon.Id);
        input.Phone = "ring the bell";

        var refusal = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, input));

        Assert.Equal(nameof(Slice.Input.Phone), refusal.Field);
    }

    [Fact]
    public async Task The_same_tap_sent_twice_opens_one_salon()
    {
        await using var clinic = await OpenAsync();
        var input = await OpenFormAsync(clinic, null);
        input.Name = "Harbour";
        var key = Guid.CreateVersion7();

        var first = await SaveAsync(clinic, input, key);
        var second = await SaveAsync(clinic, input, key);

        Assert.Equal(first, second);
        Assert.Equal(3, await clinic.ReadAsync(db => db.Salons.CountAsync(Cancel)));
    }

    [Fact]
    public async Task A_new_salon_begins_with_the_zone_and_money_of_the_practice_s_country()
    {
        await using var clinic = await OpenAsync();

        var input = await OpenFormAsync(clinic, null);

        Assert.Equal(("Europe/London", "GBP"), (input.Zone, input.Currency));
    }

    [Fact]
    public async Task A_name_that_is_taken_is_refused_in_a_sentence()
    {
        await using var clinic = await OpenAsync();
        var input = await OpenFormAsync(clinic, null);
        input.Name = "Elm Row";

        var refusal = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, input));

        Assert.Equal("There is a salon called Elm Row already.", refusal.Message);
    }

    [Fact]
    public async Task A_salon_of_other_people_is_not_found_by_a_manager()
    {
        await using var clinic = await OpenAsync();

        Assert.Null(await ManagerAsync<Slice, Slice.Input?>(clinic, s => s.OpenAsync(Other.Id, Cancel)));
        var input = await OpenFormAsync(clinic, Other.Id);
        await Refused.SayingAsync(
            "This salon is not one of yours.",
            () => ManagerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel))
        );
    }

    [Fact]
    public async Task A_manager_who_opens_a_salon_works_there()
    {
        await using var clinic = await OpenAsync();
        var input = await ManagerAsync<Slice, Slice.Input?>(clinic, s => s.OpenAsync(null, Cancel));
        input!.Name = "Harbour";

        var outcome = await ManagerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));

        var salons = await clinic.ReadAsync(db =>
            db.PersonSalons.Where(s => s.PersonId == Manager.Id).Select(s => s.SalonId).ToListAsync(Cancel)
        );
        Assert.Equivalent(new[] { Salon.Id, outcome.SalonId }, salons);
    }

    [Fact]
    public async Task A_salon_with_visits_ahead_does_not_close_for_good()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            var client = scene.AddClient("C-1", "Ada Fenwick", Salon);
            scene.Book(
                client,
                scene.ServiceWithPurpose(ServicePurpose.Rebond),
                scene.Chairs[0],
                Stylist,
                TestClinic.UsualNow + Duration.FromDays(7)
            );
        });
        var input = await OpenFormAsync(clinic, Salon.Id);
        input.Retire = true;

        await Refused.SayingAsync("Visits still booked here: {0}. Move them first.", () => SaveAsync(clinic, input));

        var other = await OpenFormAsync(clinic, Other.Id);
        other.Retire = true;
        await SaveAsync(clinic, other);
        Assert.Equal(["Canal Side"], await clinic.ReadAsync(db => db.Salons.Where(s => s.Retired).Select(s => s.Name).ToListAsync(Cancel)));
    }

    private async Task<Slice.Input> OpenFormAsync(TestClinic clinic, Guid? id) =>
        (await OwnerAsync<Slice, Slice.Input?>(clinic, s => s.OpenAsync(id, Cancel)))!;

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input, Guid? key = null) =>
        OwnerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(key ?? Guid.CreateVersion7(), input, Cancel));
}
