using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
using Microsoft.EntityFrameworkCore;
using Care = HairClinic.Web.Features.Visits.LogVisit;
using Details = HairClinic.Web.Features.Visits.VisitDetails;
using Rebond = HairClinic.Web.Features.Visits.LogRebond;
using Slice = HairClinic.Web.Features.Visits.UndoVisitLog;

namespace HairClinic.Web.Tests.Features.Visits.UndoVisitLog;

public sealed class UndoVisitLogTests(PgServer server)
{
    private ChairScene _scene = new();

    [Fact]
    public async Task Taken_back_the_old_bond_is_open_again_and_the_visit_can_be_logged_anew()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        await LogAsync(clinic, _scene.Spare.Id);

        await UndoAsync(clinic, _scene.Stylist);

        var bond = await clinic.ReadAsync(db => db.Bonds.SingleAsync(Cancellation));
        Assert.True(bond.IsOpen);
        Assert.Equal(_scene.Bond!.Id, bond.Id);
        var states = await clinic.ReadAsync(db => db.HairSystems.OrderBy(u => u.Serial).Select(u => u.State).ToListAsync(Cancellation));
        Assert.Equal([UnitState.Bonded, UnitState.Accepted], states);
        await LogAsync(clinic, _scene.Worn.Id);
        Assert.Equal(2, await clinic.ReadAsync(db => db.Bonds.CountAsync(Cancellation)));
    }

    [Fact]
    public async Task A_first_fitting_taken_back_leaves_a_bare_head()
    {
        _scene = new ChairScene { Bonded = false, Purpose = ServicePurpose.FirstFitting };
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        await LogAsync(clinic, _scene.Spare.Id);

        await UndoAsync(clinic, _scene.Stylist);

        Assert.Equal(0, await clinic.ReadAsync(db => db.Bonds.CountAsync(Cancellation)));
        Assert.Equal(VisitState.InChair, await clinic.ReadAsync(db => db.Visits.Select(v => v.State).SingleAsync(Cancellation)));
    }

    [Fact]
    public async Task A_colleague_may_not_take_it_back_and_tomorrow_nobody_may()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        await LogAsync(clinic, _scene.Worn.Id);

        await Refused.SayingAsync("Only the one who logged it, or a manager, can take it back.", () => UndoAsync(clinic, _scene.Colleague));
        clinic.Clock.AdvanceDays(1);
        await Refused.SayingAsync("A log can be taken back only on the day it was written.", () => UndoAsync(clinic, _scene.Stylist));
    }

    [Fact]
    public async Task What_was_written_is_in_the_form_again()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        await LogAsync(
            clinic,
            _scene.Spare.Id,
            input =>
                (input.Shedding, input.GradesCopied, input.Note, input.FoundLifted, input.LiftedSince, input.WaitsKept) = (
                    2,
                    true,
                    "left temple",
                    true,
                    SinceWhen.AboutAWeek,
                    false
                )
        );

        await UndoAsync(clinic, _scene.Stylist);

        var again = (await AsStylistAsync<Rebond, Rebond.Screen?>(clinic, s => s.OpenAsync(_scene.Visit.Id, Cancellation)))!.Draft!;
        Assert.Equal(
            (2, "left temple", true, SinceWhen.AboutAWeek, false, _scene.Spare.Id, _scene.Bond!.Id),
            (again.Shedding, again.Note, again.FoundLifted, again.LiftedSince, again.WaitsKept, again.UnitId, again.WornBondId)
        );
        Assert.Equal((null, true), (again.Knots, again.GradesCopied));
        Assert.Equal([(_scene.Adhesive.Id, _scene.Open.Id)], again.Products.Select(p => (p.ProductId, p.LotId!.Value)));
        Assert.NotNull(again.FinishedAt);
        await AsStylistAsync<Rebond, Rebond.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), again, Cancellation));
        Assert.Equal("left temple", await clinic.ReadAsync(db => db.VisitRecords.Select(r => r.Note).SingleAsync(Cancellation)));
    }

    [Fact]
    public async Task Care_that_was_written_is_in_the_form_again()
    {
        _scene = new ChairScene { Purpose = ServicePurpose.WashAndStyle };
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        await AsStylistAsync<Care, Care.Outcome>(
            clinic,
            async slice =>
            {
                var input = (await slice.OpenAsync(_scene.Visit.Id, Cancellation))!.Start;
                (input.EdgeUp, input.Note) = (false, "dry ends");
                return await slice.SaveAsync(Guid.CreateVersion7(), input, Cancellation);
            }
        );

        await UndoAsync(clinic, _scene.Stylist);

        var again = (await AsStylistAsync<Care, Care.Screen?>(clinic, s => s.OpenAsync(_scene.Visit.Id, Cancellation)))!.Draft!;
        Assert.Equal((false, "dry ends", true), (again.EdgeUp, again.Note, again.MustSayEdges));
    }

    // A bad lot is looked for by its heads: also by one whose log was corrected.
    [Fact]
    public async Task Product_and_lot_stay_findable_and_count_for_nothing()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        await LogAsync(clinic, _scene.Spare.Id);

        await UndoAsync(clinic, _scene.Stylist);

        var heads = await clinic.ReadAsync(db =>
            (
                from used in db.Set<BondProduct>()
                join bond in db.IncludingTakenBack<Bond>() on used.BondId equals bond.Id
                where used.LotId == _scene.Open.Id && bond.VisitId == _scene.Visit.Id
                select new { bond.ClientId, bond.RemovedBecause }
            ).ToListAsync(Cancellation)
        );
        Assert.Equal([(_scene.Client.Id, RemovalReason.TakenBack)], heads.Select(h => (h.ClientId, h.RemovedBecause!.Value)));
        Assert.Equal([_scene.Bond!.Id], await clinic.ReadAsync(db => db.Bonds.Select(b => b.Id).ToListAsync(Cancellation)));
        var shown = (await AsStylistAsync<Details, Details.Screen?>(clinic, s => s.OpenAsync(_scene.Visit.Id, Cancellation)))!.TakenBack;
        Assert.Equal([("Adhesive A", "A-1")], Assert.Single(shown).Products.Select(p => (p.Product, p.Lot!)));
    }

    [Fact]
    public async Task What_goes_is_said_before()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        await LogAsync(clinic, _scene.Spare.Id, input => (input.Note, input.Shedding) = ("left temple", 1));

        var asked = await AskAsync(clinic);

        Assert.Equal(new Slice.Screen(null, Note: true, Grades: true, Lift: false, Waits: true, _scene.Spare.Serial), asked);
        Assert.Equal(2, await clinic.ReadAsync(db => db.Bonds.CountAsync(Cancellation)));
    }

    [Fact]
    public async Task Where_it_would_be_refused_it_is_said_why()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        await LogAsync(clinic, _scene.Spare.Id);
        await clinic.LayAsync(s =>
            s.Db.HairSystems.Single(u => u.Id == _scene.Worn.Id).LeaveService(UnitState.Retired, ChairScene.Today, "worn out")
        );

        var asked = await AskAsync(clinic);

        Assert.Equal("Unit {0} is {1}: it cannot be bonded.", asked.WhyNot!.Sentence);
        Assert.Equal(asked.WhyNot.Sentence, (await Assert.ThrowsAsync<Refusal>(() => UndoAsync(clinic, _scene.Stylist))).Sentence);
    }

    private async Task<Slice.Screen> AskAsync(TestClinic clinic) =>
        (await AsStylistAsync<Slice, IReadOnlyDictionary<Guid, Slice.Screen>>(clinic, s => s.OpenAsync([_scene.Visit.Id], Cancellation)))[
            _scene.Visit.Id
        ];

    private Task<T> AsStylistAsync<TSlice, T>(TestClinic clinic, Func<TSlice, Task<T>> call)
        where TSlice : notnull => clinic.UseAsync(clinic.Acting(_scene.Stylist, _scene.Salon), call);

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private async Task LogAsync(TestClinic clinic, Guid unit, Action<Rebond.Input>? more = null) =>
        await clinic.UseAsync<Rebond, Rebond.Outcome>(
            clinic.Acting(_scene.Stylist, _scene.Salon),
            async slice =>
            {
                var input = (await slice.OpenAsync(_scene.Visit.Id, Cancellation))!.Start;
                (input.FoundLifted, input.WaitsKept, input.UnitId) = (false, true, unit);
                more?.Invoke(input);
                return await slice.SaveAsync(Guid.CreateVersion7(), input, Cancellation);
            }
        );

    private Task<Slice.Outcome> UndoAsync(TestClinic clinic, Person by) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(by, _scene.Salon),
            s => s.SaveAsync(Guid.CreateVersion7(), new(_scene.Visit.Id), Cancellation)
        );
}
