using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Sql;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Features.MyHair;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.MyHair.ChooseATime;

namespace HairClinic.Web.Tests.Features.MyHair.ChooseATime;

public sealed class ChooseATimeTests(PgServer server)
{
    private readonly OwnScene _own = new();

    [Fact]
    public async Task Free_times_lie_around_the_due_day_and_leave_out_what_is_taken()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);

        var screen = await OpenAsync(clinic, _own.Rebond.Id);

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
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);

        var screen = await OpenAsync(clinic, service: null);

        Assert.Equal(["Fix a lift", "Full service with rebond", "Rebond", "Wash and style"], screen!.Services.Select(s => s.Name));
        var consultation = await clinic.ReadAsync(db => db.ServiceKinds.SingleAsync(s => s.Name == "Consultation", Cancel));
        await Refused.SayingAsync(
            "This service is no longer offered. Choose another.",
            () =>
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
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);
        var input = new Slice.Input
        {
            Key = Guid.CreateVersion7(),
            Service = _own.Rebond.Id,
            At = OwnScene.FreeAt,
        };

        var answers = await Task.WhenAll(SaveAsync(clinic, input), SaveAsync(clinic, input));

        Assert.All(answers, a => Assert.Equal(new LocalDateTime(2027, 2, 12, 14, 0), a.At));
        Assert.Equal(2, await CountAsync(clinic));
    }

    [Fact]
    public async Task Of_two_who_want_the_last_place_one_is_booked_and_the_other_is_offered_the_nearest()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);

        var answers = await Task.WhenAll(
            Enumerable
                .Range(0, 2)
                .Select(_ =>
                    SaveAsync(
                        clinic,
                        new()
                        {
                            Key = Guid.CreateVersion7(),
                            Service = _own.Rebond.Id,
                            At = OwnScene.FreeAt,
                        }
                    )
                )
        );

        var lost = Assert.Single(answers, a => a.At is null);
        Assert.NotEmpty(lost.Nearest);
        Assert.Equal(2, await CountAsync(clinic));
    }

    [Fact]
    public async Task A_time_outside_the_opening_hours_is_never_given()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);

        var answer = await SaveAsync(
            clinic,
            new()
            {
                Key = Guid.CreateVersion7(),
                Service = _own.Rebond.Id,
                At = Instant.FromUtc(2027, 2, 12, 20, 0),
            }
        );

        Assert.Null(answer.At);
    }

    [Fact]
    public async Task A_fourth_visit_ahead_is_for_the_desk_to_book()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);
        for (var day = 1; day <= 2; day++)
            Assert.NotNull((await SaveAsync(clinic, At(OwnScene.FreeAt + Duration.FromDays(7 * day)))).At);

        await Refused.SayingAsync(
            "You have {0} visits booked already. To book more, please ring us.",
            () => SaveAsync(clinic, At(OwnScene.FreeAt))
        );

        Slice.Input At(Instant at) =>
            new()
            {
                Key = Guid.CreateVersion7(),
                Service = _own.Rebond.Id,
                At = at,
            };
    }

    [Fact]
    public async Task Eight_forms_sent_at_once_leave_three_visits_ahead_and_the_same_sentence_for_the_rest()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);

        var answers = await Task.WhenAll(
            Enumerable
                .Range(1, 8)
                .Select(async week =>
                {
                    try
                    {
                        return (await SaveAsync(clinic, At(OwnScene.FreeAt + Duration.FromDays(7 * week)))).At is not null
                            ? "booked"
                            : "taken";
                    }
                    catch (Refusal refusal)
                    {
                        return refusal.Message;
                    }
                })
        );

        // One was booked before.
        Assert.Equal(SelfBookingRule.MostAhead, await CountAsync(clinic));
        Assert.Equal(2, answers.Count(a => a == "booked"));
        Assert.Equal(6, answers.Count(a => a == "You have 3 visits booked already. To book more, please ring us."));

        Slice.Input At(Instant at) =>
            new()
            {
                Key = Guid.CreateVersion7(),
                Service = _own.Rebond.Id,
                At = at,
            };
    }

    [Fact]
    public async Task The_database_counts_what_a_client_books_and_not_what_the_desk_does()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);
        await clinic.LayAsync(s => Lay(s.Db, weeks: [1, 2, 3]));
        Assert.Equal(4, await CountAsync(clinic));

        var refused = await Assert.ThrowsAsync<DbUpdateException>(() =>
            clinic.UseAsync<ClinicDbFactory, int>(
                _own.Acting(clinic),
                async databases =>
                {
                    await using var db = databases.Open();
                    Lay(db, weeks: [4]);
                    return await db.SaveChangesAsync(Cancel);
                }
            )
        );

        Assert.True(WriteOnce.ViolatesConstraint(refused, VisitTriggers.MostAhead));

        void Lay(ClinicDb db, int[] weeks)
        {
            foreach (var week in weeks)
            {
                var visit = new Visit(Guid.CreateVersion7(), _own.Client.Id, _own.Salon.Id, _own.Rebond.Id);
                visit.PutAt(_own.Rebond, OwnScene.FreeAt + Duration.FromDays(7 * week), null, null, _own.Salon, [Guid.CreateVersion7()]);
                db.Visits.Add(visit);
            }
        }
    }

    [Fact]
    public async Task A_time_at_which_they_have_a_visit_themselves_is_not_offered_and_is_refused_with_that_visit()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                _own.Lay(scene);
                // So that nothing but the client is in the way.
                var chair = new Domain.Chairs.Chair(Guid.CreateVersion7(), _own.Salon.Id, "Chair 2", 2);
                scene.Db.Chairs.Add(chair);
                scene.Hire("Second", StaffRole.Stylist, _own.Salon);
            }
        );
        var late = OwnScene.BookedAt + Duration.FromMinutes(15);

        var screen = await clinic.UseAsync<Slice, Slice.Screen?>(_own.Acting(clinic), s => s.OpenAsync(_own.Rebond.Id, null, late, Cancel));
        var answer = await SaveAsync(
            clinic,
            new()
            {
                Key = Guid.CreateVersion7(),
                Service = _own.Rebond.Id,
                At = late,
            }
        );

        Assert.DoesNotContain(
            screen!.Slots,
            s => s.StartsAt > OwnScene.BookedAt - Duration.FromMinutes(90) && s.StartsAt < OwnScene.BookedAt + Duration.FromMinutes(90)
        );
        Assert.Null(answer.At);
        Assert.Equal((OwnScene.BookedAt, "Elm Row", null), (answer.Own!.StartsAt, answer.Own.Salon, answer.Own.Chair));
        Assert.Equal(1, await CountAsync(clinic));
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private Task<int> CountAsync(TestClinic clinic) =>
        clinic.ReadAsync(db => db.Visits.CountAsync(v => v.ClientId == _own.Client.Id && v.State == VisitState.Booked, Cancel));

    private Task<Slice.Screen?> OpenAsync(TestClinic clinic, Guid? service) =>
        clinic.UseAsync<Slice, Slice.Screen?>(_own.Acting(clinic), slice => slice.OpenAsync(service, around: null, at: null, Cancel));

    private Task<SelfBookingOutcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        clinic.UseAsync<Slice, SelfBookingOutcome>(_own.Acting(clinic), slice => slice.SaveAsync(input, Cancel));
}
