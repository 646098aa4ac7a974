using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.MyHair.ChooseATime.ChooseATime;

namespace HairClinic.Web.Tests.Features.MyHair.ChooseATime;

public sealed class ChooseATimeTests(PgServer server)
{
    private readonly OwnScene own = new();

    [Fact]
    public async Task Free_times_lie_around_the_due_day_and_leave_out_what_is_taken()
    {
        await using var clinic = await TestClinic.OpenAsync(server, own.Lay);

        var screen = await OpenAsync(clinic, own.Rebond.Id);

        Assert.Equal(new LocalDate(2027, 2, 12), screen!.Around);
        Assert.NotEmpty(screen.Slots);
        // The salon opens from Tuesday to Saturday, nine to six; the chair is taken from 10 to 11:30 and from 12 to 13:30.
        Assert.All(screen.Slots, s => Assert.InRange(s.Local.DayOfWeek, IsoDayOfWeek.Tuesday, IsoDayOfWeek.Saturday));
        Assert.DoesNotContain(
            screen.Slots,
            s => s.StartsAt > OwnScene.BookedAt - Duration.FromMinutes(90) && s.StartsAt < OwnScene.BookedAt + Duration.FromMinutes(90)
        );
    }

    [Fact]
    public async Task Only_what_is_offered_to_clients_can_be_chosen()
    {
        await using var clinic = await TestClinic.OpenAsync(server, own.Lay);

        var screen = await OpenAsync(clinic, service: null);

        Assert.Equal(["Fix a lift", "Full service with rebond", "Rebond", "Wash and style"], screen!.Services.Select(s => s.Name));
        var consultation = await clinic.ReadAsync(db => db.ServiceKinds.SingleAsync(s => s.Name == "Consultation", Cancel));
        await Assert.ThrowsAsync<Refusal>(() =>
            SaveAsync(
                clinic,
                new()
                {
                    Key = Guid.CreateVersion7(),
                    Service = consultation.Id,
                    At = OwnScene.FreeAt,
                }
            )
        );
    }

    [Fact]
    public async Task A_double_tap_books_once()
    {
        await using var clinic = await TestClinic.OpenAsync(server, own.Lay);
        var input = new Slice.Input
        {
            Key = Guid.CreateVersion7(),
            Service = own.Rebond.Id,
            At = OwnScene.FreeAt,
        };

        var answers = await Task.WhenAll(SaveAsync(clinic, input), SaveAsync(clinic, input));

        Assert.All(answers, a => Assert.Equal(new LocalDateTime(2027, 2, 12, 14, 0), a.Booked));
        Assert.Equal(2, await CountAsync(clinic));
    }

    [Fact]
    public async Task Of_two_who_want_the_last_place_one_is_booked_and_the_other_is_offered_the_nearest()
    {
        await using var clinic = await TestClinic.OpenAsync(server, own.Lay);

        var answers = await Task.WhenAll(
            Enumerable
                .Range(0, 2)
                .Select(_ =>
                    SaveAsync(
                        clinic,
                        new()
                        {
                            Key = Guid.CreateVersion7(),
                            Service = own.Rebond.Id,
                            At = OwnScene.FreeAt,
                        }
                    )
                )
        );

        var lost = Assert.Single(answers, a => a.Booked is null);
        Assert.NotEmpty(lost.Nearest);
        Assert.Equal(2, await CountAsync(clinic));
    }

    [Fact]
    public async Task A_time_outside_the_opening_hours_is_never_given()
    {
        await using var clinic = await TestClinic.OpenAsync(server, own.Lay);

        var answer = await SaveAsync(
            clinic,
            new()
            {
                Key = Guid.CreateVersion7(),
                Service = own.Rebond.Id,
                At = Instant.FromUtc(2027, 2, 12, 20, 0),
            }
        );

        Assert.Null(answer.Booked);
    }

    [Fact]
    public async Task A_fourth_visit_ahead_is_for_the_desk_to_book()
    {
        await using var clinic = await TestClinic.OpenAsync(server, own.Lay);
        for (var day = 1; day <= 2; day++)
            Assert.NotNull((await SaveAsync(clinic, At(OwnScene.FreeAt + Duration.FromDays(7 * day)))).Booked);

        await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, At(OwnScene.FreeAt)));

        Slice.Input At(Instant at) =>
            new()
            {
                Key = Guid.CreateVersion7(),
                Service = own.Rebond.Id,
                At = at,
            };
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private Task<int> CountAsync(TestClinic clinic) =>
        clinic.ReadAsync(db => db.Visits.CountAsync(v => v.ClientId == own.Client.Id && v.State == VisitState.Booked, Cancel));

    private Task<Slice.Screen?> OpenAsync(TestClinic clinic, Guid? service) =>
        clinic.UseAsync<Slice, Slice.Screen?>(own.Acting(clinic), slice => slice.OpenAsync(service, around: null, at: null, Cancel));

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        clinic.UseAsync<Slice, Slice.Outcome>(own.Acting(clinic), slice => slice.SaveAsync(input, Cancel));
}
