using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Privacy;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Privacy;
using HairClinic.Web.Tests.Workers;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using CardSlice = HairClinic.Web.Features.Clients.Card;
using NextSlice = HairClinic.Web.Features.Clients.NextUnit;
using Slice = HairClinic.Web.Features.Clients.EndNeed;

namespace HairClinic.Web.Tests.Features.Clients.EndNeed;

public sealed class EndNeedTests(PgServer server)
{
    private readonly EndNeedScene _scene = new();

    private static CancellationToken Cancel => EndNeedScene.Cancel;

    [Fact]
    public async Task With_one_save_the_draft_is_dropped_the_order_called_off_and_each_unit_has_its_step()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var screen = (await _scene.ScreenAsync(clinic))!;

        Assert.Equal(
            new[] { _scene.Ordered, _scene.Worn, _scene.Spare }.Select(u => u.Id).Order(),
            screen.Start.Units.Select(u => u.UnitId).Order()
        );
        var outcome = await _scene.SaveAsync(clinic, await _scene.InputAsync(clinic, NeedEnd.MovedAway));

        Assert.Equal(2, outcome.Visits);
        Assert.Equal([new Slice.ToTell("O-1", "Workshop North")], outcome.CalledOff);
        Assert.Equal(
            new[]
            {
                (_scene.Worn.Id, UnitStepKind.Retired, UnitState.Retired),
                (_scene.Spare.Id, UnitStepKind.ReturnedToClient, UnitState.ReturnedToClient),
                (_scene.Draft.Id, UnitStepKind.Cancelled, UnitState.Cancelled),
                (_scene.Ordered.Id, UnitStepKind.Cancelled, UnitState.Cancelled),
            }.Order(),
            (await clinic.ReadAsync(db => db.UnitSteps.Where(s => s.RecordedBy == _scene.Given.Desk.Id).ToListAsync(Cancel)))
                .Select(s => (s.HairSystemId, s.Kind, s.After.State))
                .Order()
        );
        Assert.Equal(UnitState.Shipped, await _scene.StateAsync(clinic, _scene.Shipped));
        var ada = await clinic.ReadAsync(db => db.Clients.SingleAsync(c => c.Id == _scene.Ada.Id, Cancel));
        Assert.Equal((_scene.TakenOff, NeedEnd.MovedAway), (ada.LeftOn!.Value, ada.NeedEndedBecause!.Value));
    }

    [Fact]
    public async Task Visits_ahead_in_every_salon_are_called_off_or_kept_as_was_said()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var unsaid = await _scene.InputAsync(clinic, NeedEnd.HairReturned, visits: null);

        await Refused.SayingAsync("Say what becomes of the visits ahead.", () => _scene.SaveAsync(clinic, unsaid));
        await _scene.SaveAsync(clinic, unsaid with { CallOffVisits = false });
        Assert.Equal([VisitState.Booked, VisitState.Booked], await _scene.VisitsAsync(clinic));

        await BackAsync(clinic);
        await _scene.SaveAsync(clinic, (await _scene.ScreenAsync(clinic))!.Start with { Because = NeedEnd.Died, CallOffVisits = true });

        Assert.Equal([VisitState.Cancelled, VisitState.Cancelled], await _scene.VisitsAsync(clinic));
        Assert.Equal(
            0,
            await clinic.ReadAsync(db => db.Set<VisitSegment>().CountAsync(s => s.HoldsChair && s.VisitId == _scene.Here.Id, Cancel))
        );
    }

    [Fact]
    public async Task The_plan_of_the_next_order_goes_with_the_work_of_that_save()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await Letterbox.WorkAsync(clinic, new Letterbox());
        Assert.Equal(1, await PlansAsync());

        await _scene.SaveAsync(clinic, await _scene.InputAsync(clinic, NeedEnd.Other));
        await Letterbox.WorkAsync(clinic, new Letterbox());

        Assert.Equal(0, await PlansAsync());

        Task<int> PlansAsync() => clinic.ReadAsync(db => db.ReorderPlans.CountAsync(p => p.ClientId == _scene.Ada.Id, Cancel));
    }

    [Fact]
    public async Task Two_people_at_once_end_it_once()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var (one, other) = (
            await _scene.InputAsync(clinic, NeedEnd.MovedAway),
            await _scene.InputAsync(clinic, NeedEnd.HairReturned, visits: false)
        );
        var key = Guid.CreateVersion7();

        var first = await _scene.SaveAsync(clinic, one, key);
        await Refused.SayingAsync("Their need ended on {0} already.", () => _scene.SaveAsync(clinic, other));

        Assert.Equal(first.Because, (await _scene.SaveAsync(clinic, one, key)).Because);
        Assert.Equal(
            (NeedEnd?)NeedEnd.MovedAway,
            await clinic.ReadAsync(db => db.Clients.Where(c => c.Id == _scene.Ada.Id).Select(c => c.NeedEndedBecause).SingleAsync(Cancel))
        );
    }

    [Fact]
    public async Task Whoever_changed_the_client_meanwhile_is_not_overwritten()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var input = await _scene.InputAsync(clinic, NeedEnd.MovedAway);
        await clinic.LayAsync(s => s.Db.Clients.Single(c => c.Id == _scene.Ada.Id).Rename("Ada Yarrow", null));

        await Assert.ThrowsAsync<OvertakenException>(() => _scene.SaveAsync(clinic, input));

        Assert.Equal(UnitState.Specified, await _scene.StateAsync(clinic, _scene.Draft));
    }

    [Fact]
    public async Task What_is_refused_changes_nothing()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var input = await _scene.InputAsync(clinic, NeedEnd.MovedAway);
        EndNeedScene.Choose(input, _scene.Worn, UnitAfterNeed.GivenForTraining);

        await Refused.SayingAsync(
            "Unit {0} is not given for training: the client has not agreed to that.",
            () => _scene.SaveAsync(clinic, input)
        );

        Assert.Equal([VisitState.Booked, VisitState.Booked], await _scene.VisitsAsync(clinic));
        Assert.Equal(UnitState.Specified, await _scene.StateAsync(clinic, _scene.Draft));
        Assert.Equal(3, (await Letterbox.ItemsAsync(clinic)).Count(i => i.Kind == WorkKind.SendMail));
        Assert.Equal(0, await clinic.ReadAsync(db => db.Clients.CountAsync(c => c.LeftOn != null, Cancel)));
    }

    [Fact]
    public async Task By_their_consent_a_unit_is_given_for_training()
    {
        await using var clinic = await _scene.OpenAsync(server);
        Assert.False((await _scene.ScreenAsync(clinic))!.TrainingAgreed);
        await AgreeAsync(clinic);
        Assert.True((await _scene.ScreenAsync(clinic))!.TrainingAgreed);
        var input = await _scene.InputAsync(clinic, NeedEnd.MovedAway);
        EndNeedScene.Choose(input, _scene.Worn, UnitAfterNeed.GivenForTraining);

        await _scene.SaveAsync(clinic, input);

        Assert.Equal(
            (UnitState.Retired, "given for training"),
            await clinic.ReadAsync(async db =>
            {
                var unit = await db.HairSystems.SingleAsync(u => u.Id == _scene.Worn.Id, Cancel);
                return (unit.State, unit.RetiredBecause);
            })
        );
    }

    [Fact]
    public async Task What_is_on_the_head_or_lent_comes_off_and_back_first()
    {
        HairSystem cap = null!;
        await using var clinic = await _scene.OpenAsync(
            server,
            s =>
            {
                s.Given.Scene.AddBond(s.Ada, s.Spare, s.Given.Today.PlusDays(-5), s.Given.Adhesive);
                cap = s.Given.Scene.AddUnit(s.Ada, s.Given.Lace, s.Given.Today.PlusDays(-3));
                s.Given.Scene.Db.UnitLoans.Add(
                    new UnitLoan(Guid.CreateVersion7(), cap.Id, s.Ada.Id, s.Given.Today.PlusDays(-1), s.Given.Today.PlusDays(9))
                );
            }
        );
        var screen = (await _scene.ScreenAsync(clinic))!;

        Assert.Equal((true, cap.Id), (screen.WearsBond, Assert.Single(screen.Borrowed).Id));
        await Refused.SayingAsync(
            "A unit is still on their head. Ask a stylist to log the take-down first.",
            () => _scene.SaveAsync(clinic, screen.Start with { Because = NeedEnd.Other })
        );
    }

    [Fact]
    public async Task Of_somebody_who_died_the_bond_ends_unseen_and_what_they_wore_stays_with_them()
    {
        await using var clinic = await _scene.OpenAsync(
            server,
            s => s.Given.Scene.AddBond(s.Ada, s.Spare, s.Given.Today.PlusDays(-4), s.Given.Adhesive)
        );
        var input = (await _scene.ScreenAsync(clinic))!.Start with { Because = NeedEnd.Died, CallOffVisits = true };
        EndNeedScene.Choose(input, _scene.Ordered, UnitAfterNeed.CalledOff);
        EndNeedScene.Choose(input, _scene.Worn, UnitAfterNeed.DecidedLater);

        await _scene.SaveAsync(clinic, input);

        var bond = await clinic.ReadAsync(db => db.Bonds.SingleAsync(b => b.HairSystemId == _scene.Spare.Id, Cancel));
        Assert.Equal((RemovalReason.NotSeenAgain, _scene.Given.Today), (bond.RemovedBecause, bond.RemovedOn));
        Assert.Equal(UnitState.ReturnedToClient, await _scene.StateAsync(clinic, _scene.Spare));
        Assert.Equal(UnitState.Resting, await _scene.StateAsync(clinic, _scene.Worn));
    }

    [Fact]
    public async Task Their_next_unit_is_worked_out_no_more()
    {
        await using var clinic = await _scene.OpenAsync(server);
        Task<NextSlice.Screen?> NextAsync() =>
            clinic.UseAsync<NextSlice, NextSlice.Screen?>(
                clinic.Acting(_scene.Given.Desk, _scene.Given.Here),
                s => s.OpenAsync(_scene.Ada.Id, Cancel)
            );

        Assert.NotNull((await NextAsync())!.Plan);
        await _scene.SaveAsync(clinic, await _scene.InputAsync(clinic, NeedEnd.HairReturned));

        Assert.Null((await NextAsync())!.Plan);
    }

    [Fact]
    public async Task Another_salon_neither_opens_nor_saves_it_and_the_database_holds_that()
    {
        await using var clinic = await _scene.OpenAsync(server, s => s.Given.LetIn(s.Ada));
        var there = clinic.Acting(_scene.Given.DeskThere, _scene.Given.There);
        var input = await _scene.InputAsync(clinic, NeedEnd.MovedAway);

        Assert.Null(await clinic.UseAsync<Slice, Slice.Screen?>(there, s => s.OpenAsync(_scene.Ada.Id, Cancel)));
        await Refused.SayingAsync(
            "This client is not there any more. They may have been merged with another record.",
            () => clinic.UseAsync<Slice, Slice.Outcome>(there, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel))
        );
        await Refused.SayingAsync(
            "Only the client's home salon does this. Ask somebody who works there, or an owner.",
            () =>
                clinic.UseAsync<WriteOnce, bool>(
                    there,
                    w =>
                        w.RunAsync(
                            Guid.CreateVersion7(),
                            "test",
                            1,
                            async db =>
                            {
                                (await db.Clients.SingleAsync(c => c.Id == _scene.Ada.Id, Cancel)).Leave(_scene.Given.Today);
                                return true;
                            },
                            Cancel
                        )
                )
        );
    }

    [Fact]
    public async Task Why_is_on_the_card_for_the_home_salon_alone()
    {
        await using var clinic = await _scene.OpenAsync(server, s => s.Given.LetIn(s.Ada));
        await _scene.SaveAsync(clinic, await _scene.InputAsync(clinic, NeedEnd.HairReturned, visits: false));

        var (here, there) = (
            await CardAsync(clinic, clinic.Acting(_scene.Given.Desk, _scene.Given.Here)),
            await CardAsync(clinic, clinic.Acting(_scene.Given.DeskThere, _scene.Given.There))
        );

        Assert.Equal(
            (_scene.TakenOff, (NeedEnd?)NeedEnd.HairReturned, null),
            (here.Client.LeftOn!.Value, here.NeedEndedBecause, here.NextUnit)
        );
        Assert.Equal((_scene.TakenOff, (NeedEnd?)null), (there.Client.LeftOn!.Value, there.NeedEndedBecause));
    }

    [Fact]
    public async Task Whoever_is_back_is_planned_for_again_and_what_was_called_off_stays_so()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await _scene.SaveAsync(clinic, await _scene.InputAsync(clinic, NeedEnd.TryingWithout));
        Assert.Equal(NeedEnd.TryingWithout, (await _scene.ScreenAsync(clinic))!.Because);

        await BackAsync(clinic);

        var screen = (await _scene.ScreenAsync(clinic))!;
        Assert.Equal((null, null), (screen.Ended, screen.Because));
        Assert.Equal([VisitState.Cancelled, VisitState.Cancelled], await _scene.VisitsAsync(clinic));
        Assert.Equal(UnitState.Cancelled, await _scene.StateAsync(clinic, _scene.Ordered));
        await Refused.SayingAsync("They are a client already.", () => BackAsync(clinic));
    }

    private Task<CardSlice.Screen> CardAsync(TestClinic clinic, PersonActor person) =>
        clinic.UseAsync<CardSlice, CardSlice.Screen>(person, async s => (await s.OpenAsync(_scene.Ada.Id, Cancel)).Screen!);

    private async Task<bool> BackAsync(TestClinic clinic)
    {
        var version = (await _scene.ScreenAsync(clinic))!.Start.Version;
        return await clinic.UseAsync<Slice, bool>(
            clinic.Acting(_scene.Given.Desk, _scene.Given.Here),
            s => s.ReturnAsync(Guid.CreateVersion7(), new(_scene.Ada.Id, version), Cancel)
        );
    }

    private Task<bool> AgreeAsync(TestClinic clinic) =>
        clinic.AsAsync(
            clinic.Job,
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                await services
                    .GetRequiredService<ConsentStore>()
                    .AddAsync(
                        db,
                        Guid.CreateVersion7(),
                        _scene.Ada.Id,
                        ConsentSubject.Training,
                        given: true,
                        ("en-GB", 1),
                        _scene.Given.Desk.Id,
                        ConsentWay.OnTablet,
                        Cancel
                    );
                return await db.SaveChangesAsync(Cancel) > 0;
            }
        );
}
