using HairClinic.Domain.Wear.Watch;
using HairClinic.Web.Features.Lasting;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Lasting.CloseWatchAlarm;

namespace HairClinic.Web.Tests.Features.Lasting.CloseWatchAlarm;

public sealed class CloseWatchAlarmTests(PgServer server)
{
    private static readonly LocalDate Raised = new(2027, 1, 20);
    private readonly DecliningWorkshop _practice = new();
    private readonly WatchAlarm _alarm = new(
        Guid.CreateVersion7(),
        new WatchedStream(WatchedStreamKind.Lot, Guid.CreateVersion7()),
        Raised.PlusDays(-60),
        14,
        Raised,
        5.6,
        4.9
    );

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_decline_that_is_over_ends_with_its_last_day_and_says_who_said_so()
    {
        await using var clinic = await OpenAsync();

        await SaveAsync(clinic, wasWorse: true, Raised);

        var closed = await AlarmAsync(clinic);
        Assert.Equal((WatchAlarmEnd.AsBefore, Raised, _practice.Owner.Id), (closed.End, closed.CohortThrough, closed.ClosedBy));
        Assert.Equal(DecliningWorkshop.Today, closed.ClosedOn);
        await Refused.SayingAsync("This alarm is closed already.", () => SaveAsync(clinic, wasWorse: false, null));
    }

    [Fact]
    public async Task One_that_was_none_is_dismissed_and_an_unknown_one_refused()
    {
        await using var clinic = await OpenAsync();

        await SaveAsync(clinic, wasWorse: false, null);

        Assert.Equal(WatchAlarmEnd.FalseAlarm, (await AlarmAsync(clinic)).End);
        await Refused.SayingAsync(
            "This alarm is not there any more.",
            () => SaveAsync(clinic, new Slice.Input { AlarmId = Guid.CreateVersion7(), WasWorse = false })
        );
    }

    [Fact]
    public void It_asks_whether_something_was_wrong_and_until_when()
    {
        var rules = new CloseWatchAlarmRules();

        Assert.Equal("Say whether something was wrong.", rules.Validate(new Slice.Input()).Errors.Single().ErrorMessage);
        Assert.Equal(
            "Choose the last day that was worse.",
            rules.Validate(new Slice.Input { WasWorse = true }).Errors.Single().ErrorMessage
        );
        Assert.True(rules.Validate(new Slice.Input { WasWorse = false }).IsValid);
    }

    private async Task<TestClinic> OpenAsync()
    {
        var clinic = await TestClinic.OpenAsync(server, _practice.Open);
        await clinic.ReadAsync(async db =>
        {
            db.WatchAlarms.Add(_alarm);
            return await db.SaveChangesAsync(Cancel);
        });
        return clinic;
    }

    private static Task<WatchAlarm> AlarmAsync(TestClinic clinic) => clinic.ReadAsync(db => db.WatchAlarms.SingleAsync(Cancel));

    private async Task<Slice.Outcome> SaveAsync(TestClinic clinic, bool wasWorse, LocalDate? through)
    {
        var alarm = await AlarmAsync(clinic);
        return await SaveAsync(
            clinic,
            new Slice.Input
            {
                AlarmId = alarm.Id,
                Version = alarm.Version,
                WasWorse = wasWorse,
                Through = through,
            }
        );
    }

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(_practice.Owner, _practice.Salon),
            s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel)
        );
}
