using HairClinic.Domain.Replay;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;
using HairClinic.Web.Workers;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Lasting.HowWellItSaid;

namespace HairClinic.Web.Tests.Features.Lasting.HowWellItSaid;

/// <summary>When it is worked out, for whom it is kept, and that the page only reads it.</summary>
public sealed class HowWellItSaidTests(PgServer server)
{
    private readonly LatePractice _practice = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task It_is_worked_out_after_a_night_at_most_once_a_week_and_kept_for_all_who_may_look()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _practice.LayBarely);
        Assert.Null((await OpenAsync(clinic, Owner(clinic))).Result);

        Assert.False(await RunAsync(clinic, afterRun: false));
        Assert.True(await RunAsync(clinic, afterRun: true));
        clinic.Clock.AdvanceDays(6);
        Assert.False(await RunAsync(clinic, afterRun: true));

        Assert.Equal(LatePractice.Today, (await OpenAsync(clinic, Owner(clinic))).Result!.Day);
        Assert.Equal(LatePractice.Today, (await OpenAsync(clinic, Manager(clinic))).Result!.Day);
        clinic.Clock.AdvanceDays(1);
        Assert.True(await RunAsync(clinic, afterRun: true));
        Assert.Equal(LatePractice.Today.PlusDays(7), (await OpenAsync(clinic, Manager(clinic))).Result!.Day);
        Assert.Equal(2, await clinic.ReadAsync(db => db.StoredPageResults.CountAsync(Cancel)));
    }

    [Fact]
    public async Task Whoever_asks_has_it_worked_out_without_waiting_for_the_week()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _practice.LayBarely);
        await RunAsync(clinic, afterRun: true);
        clinic.Clock.AdvanceDays(1);

        await clinic.UseAsync<Slice, Slice.Outcome>(Manager(clinic), s => s.SaveAsync(Guid.NewGuid(), new(), Cancel));

        Assert.True((await OpenAsync(clinic, Manager(clinic))).Asked);
        Assert.True(await RunAsync(clinic, afterRun: false));
        var screen = await OpenAsync(clinic, Owner(clinic));
        Assert.Equal((false, LatePractice.Today.PlusDays(1)), (screen.Asked, screen.Result!.Day));
    }

    [Fact]
    public async Task Whoever_works_in_no_salon_yet_asks_for_nothing()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _practice.LayBarely);
        var nowhere = clinic.Acting(_practice.Manager);

        Assert.False((await OpenAsync(clinic, nowhere)).MayAsk);
        await Refused.SayingAsync(
            "You work in no salon yet.",
            () => clinic.UseAsync<Slice, Slice.Outcome>(nowhere, s => s.SaveAsync(Guid.NewGuid(), new(), Cancel))
        );
    }

    [Fact]
    public async Task The_nights_run_leaves_it_and_what_is_kept_reads_back_in_one_look()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _practice.Lay);
        var worked = PastReplay.Run(await clinic.ReadAsync(db => PastRecords.LoadAsync(db, LatePractice.Today, Cancel)), Cancel);

        await clinic.ReadAsync(async db =>
        {
            await PastReplayStore.ReplaceAsync(db, [Owner(clinic)], worked, Cancel);
            return true;
        });
        await clinic.UseAsync<PageResultRefresher, bool>(
            clinic.Job,
            async pages =>
            {
                await pages.RunAsync(Cancel);
                return true;
            }
        );
        clinic.Commands.Clear();
        var kept = (await OpenAsync(clinic, Owner(clinic))).Result!;

        Assert.InRange(clinic.Commands.All.Count, 1, 4);
        Assert.Equal(worked with { Chances = [] }, kept with { Chances = [] });
        Assert.Equal(worked.Chances, kept.Chances);
    }

    private PersonActor Owner(TestClinic clinic) => clinic.Acting(_practice.Owner, _practice.Salon);

    private PersonActor Manager(TestClinic clinic) => clinic.Acting(_practice.Manager, _practice.Salon);

    private static Task<Slice.Screen> OpenAsync(TestClinic clinic, PersonActor who) =>
        clinic.UseAsync<Slice, Slice.Screen>(who, s => s.OpenAsync(Cancel));

    private static Task<bool> RunAsync(TestClinic clinic, bool afterRun) =>
        clinic.UseAsync<PastReplayRunner, bool>(clinic.Job, r => r.RunAsync(afterRun, Cancel));
}
