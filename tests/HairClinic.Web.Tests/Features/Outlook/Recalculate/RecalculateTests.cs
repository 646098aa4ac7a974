using HairClinic.Domain.LoadAhead;
using HairClinic.Domain.Practices;
using HairClinic.Web.Learning;
using HairClinic.Web.Workers;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Outlook.Recalculate;

namespace HairClinic.Web.Tests.Features.Outlook.Recalculate;

public sealed class RecalculateTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private Salon _salon = null!;
    private Person _manager = null!;
    private Person _desk = null!;

    [Fact]
    public async Task A_second_tap_and_a_second_person_get_the_run_that_was_asked_for()
    {
        await using var clinic = await OpenAsync();
        var key = Guid.CreateVersion7();

        var first = await AskAsync(clinic, key);
        var again = await AskAsync(clinic, key);
        var other = await AskAsync(clinic, Guid.CreateVersion7());

        Assert.Equal((first, first), (again, other));
        var run = await clinic.ReadAsync(db => db.Recalculations.SingleAsync(Cancel));
        Assert.Equal((_manager.Id, RecalculationState.Waiting), (run.AskedBy, run.State));
    }

    [Fact]
    public async Task Nothing_was_calculated_then_it_waits_then_it_is_told_of()
    {
        await using var clinic = await OpenAsync();
        var before = await LookAsync(clinic);
        await AskAsync(clinic, Guid.CreateVersion7());
        var waiting = await LookAsync(clinic);
        await clinic.UseAsync<RecalculationRunner, bool>(clinic.Job, r => r.RunAsync(Cancel));
        var after = await LookAsync(clinic);

        Assert.Equal((null, null, null), (before.Last, before.Running, before.Broken));
        Assert.Equal(RecalculationState.Waiting, waiting.Running!.State);
        Assert.Null(after.Running);
        Assert.Equal((TestClinic.UsualNow, new LocalDate(2027, 2, 3), 0), (after.Last!.EndedAt, after.Last.DataCut, after.Last.Clients));
        Assert.Equal("Europe/London", after.Zone.Id);
    }

    [Fact]
    public async Task A_run_that_is_stopped_says_so_and_one_that_has_ended_cannot_be()
    {
        await using var clinic = await OpenAsync();
        var id = await AskAsync(clinic, Guid.CreateVersion7());

        await StopAsync(clinic, id);
        Assert.True((await LookAsync(clinic)).Running!.StopAsked);
        await clinic.UseAsync<RecalculationRunner, bool>(clinic.Job, r => r.RunAsync(Cancel));

        Assert.Equal(RecalculationState.Stopped, (await LookAsync(clinic)).Broken!.State);
        await Refused.SayingAsync("It has ended already.", () => StopAsync(clinic, id));
    }

    [Fact]
    public async Task Stopping_goes_through_although_the_run_goes_on_meanwhile()
    {
        await using var clinic = await OpenAsync();
        var id = await AskAsync(clinic, Guid.CreateVersion7());

        var going = Task.Run(
            async () =>
            {
                for (var done = 0; done < 40; done++)
                {
                    await clinic.ReadAsync(db =>
                        db.Recalculations.Where(r => r.Id == id).ExecuteUpdateAsync(r => r.SetProperty(x => x.Done, done), Cancel)
                    );
                }
            },
            Cancel
        );
        await StopAsync(clinic, id);
        await going;

        Assert.True((await LookAsync(clinic)).Running!.StopAsked);
    }

    [Fact]
    public async Task A_run_that_failed_says_so_beside_the_one_the_figures_stand_on()
    {
        await using var clinic = await OpenAsync();
        await AskAsync(clinic, Guid.CreateVersion7());
        await clinic.UseAsync<RecalculationRunner, bool>(clinic.Job, r => r.RunAsync(Cancel));
        clinic.Clock.AdvanceHours(1);
        await clinic.ReadAsync(async db =>
        {
            var id = await RecalculationQueue.RequestAsync(db, null, clinic.Clock.GetCurrentInstant(), Cancel);
            (await db.Recalculations.SingleAsync(r => r.Id == id, Cancel)).Finish(
                RecalculationState.Failed,
                clinic.Clock.GetCurrentInstant(),
                "DivideByZeroException"
            );
            return await db.SaveChangesAsync(Cancel);
        });

        var screen = await LookAsync(clinic);

        Assert.Equal((RecalculationState.Failed, "DivideByZeroException"), (screen.Broken!.State, screen.Broken.Fault));
        Assert.Equal(TestClinic.UsualNow, screen.Last!.EndedAt);
    }

    [Fact]
    public async Task The_desk_cannot_ask_for_one()
    {
        await using var clinic = await OpenAsync();

        await Refused.SayingAsync(
            "This is not yours to change. Ask somebody of the client's own salon, or a manager.",
            () =>
                clinic.UseAsync<Slice, Slice.Outcome>(clinic.Acting(_desk, _salon), s => s.SaveAsync(Guid.CreateVersion7(), new(), Cancel))
        );
    }

    private async Task<Guid> AskAsync(TestClinic clinic, Guid key) =>
        (await clinic.UseAsync<Slice, Slice.Outcome>(clinic.Acting(_manager, _salon), s => s.SaveAsync(key, new(), Cancel))).Id;

    private Task<bool> StopAsync(TestClinic clinic, Guid id) =>
        clinic.UseAsync<Slice, bool>(
            clinic.Acting(_manager, _salon),
            async s =>
            {
                await s.StopAsync(id, Cancel);
                return true;
            }
        );

    private Task<Slice.Screen> LookAsync(TestClinic clinic) =>
        clinic.UseAsync<Slice, Slice.Screen>(clinic.Acting(_manager, _salon), s => s.OpenAsync(Cancel));

    private Task<TestClinic> OpenAsync() =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("North");
                _salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 2);
                _manager = scene.Hire("Mara Test", StaffRole.Manager, _salon);
                _desk = scene.Hire("Dov Test", StaffRole.FrontDesk, _salon);
            }
        );
}
