using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Visits.LogRebond;
using Undo = HairClinic.Web.Features.Visits.UndoVisitLog;

namespace HairClinic.Web.Tests.Features.Visits.LogRebond;

/// <summary>A unit of nobody's goes on a head for a time, and comes off it again. Common practice, no source.</summary>
public sealed class LoanAtTheChairTests(PgServer server)
{
    private readonly ChairScene _scene = new();
    private HairSystem _stock = null!;

    [Fact]
    public async Task It_is_lent_with_the_bond_once_it_is_said_when_it_is_due_back()
    {
        await using var clinic = await OpenAsync();

        await Refused.SayingAsync(
            "Unit {0} is nobody’s: say on which day it is due back.",
            () => BondAsync(clinic, _scene.Visit.Id, dueIn: null)
        );
        await Refused.SayingAsync(
            "A unit that is lent on {0} is due back on a later day.",
            () => BondAsync(clinic, _scene.Visit.Id, dueIn: 0)
        );
        Assert.Empty(await LoansAsync(clinic));
        await BondAsync(clinic, _scene.Visit.Id, dueIn: 14);

        var loan = Assert.Single(await LoansAsync(clinic));
        Assert.Equal((_stock.Id, _scene.Client.Id, ChairScene.Today.PlusDays(14)), (loan.HairSystemId, loan.ClientId, loan.DueBackOn));
        Assert.Equal(
            loan.Id,
            await clinic.ReadAsync(db => db.Bonds.Where(b => b.RemovedOn == null).Select(b => b.Id).SingleAsync(Cancellation))
        );
        var unit = await UnitAsync(clinic);
        Assert.Equal((UnitState.Bonded, UnitPlace.Client, (Guid?)null), (unit.State, unit.Place, unit.ClientId));
    }

    [Fact]
    public async Task One_that_is_to_be_cleaned_goes_on_when_somebody_says_that_they_cleaned_it()
    {
        await using var clinic = await OpenAsync(UnitCleaning.ToBeCleaned);

        await Refused.SayingAsync(
            "Unit {0} is not clean yet: clean it, and say that you did.",
            () => BondAsync(clinic, _scene.Visit.Id, dueIn: 14)
        );
        await BondAsync(clinic, _scene.Visit.Id, dueIn: 14, cleaned: true);

        Assert.Equal(UnitState.Bonded, (await UnitAsync(clinic)).State);
    }

    [Fact]
    public async Task Taken_back_there_is_no_loan_and_the_unit_is_on_the_shelf()
    {
        await using var clinic = await OpenAsync();
        await BondAsync(clinic, _scene.Visit.Id, dueIn: 14);

        await UndoAsync(clinic, _scene.Visit.Id);

        Assert.Empty(await LoansAsync(clinic));
        var unit = await UnitAsync(clinic);
        Assert.Equal((UnitState.Accepted, (Guid?)_scene.Salon.Id), (unit.State, unit.PlaceSalonId));
    }

    [Fact]
    public async Task It_is_back_when_another_goes_on_and_lent_again_when_that_is_taken_back()
    {
        await using var clinic = await OpenAsync();
        await BondAsync(clinic, _scene.Visit.Id, dueIn: 14);
        await clinic.LayAsync(_scene.BookNext);
        await BondAsync(clinic, _scene.Next.Id, dueIn: null, unit: _scene.Spare.Id);

        Assert.Equal(ChairScene.Today, Assert.Single(await LoansAsync(clinic)).BackOn);
        Assert.Equal((UnitState.Resting, UnitCleaning.ToBeCleaned), ((await UnitAsync(clinic)).State, (await UnitAsync(clinic)).Cleaning));
        await UndoAsync(clinic, _scene.Next.Id);

        Assert.Null(Assert.Single(await LoansAsync(clinic)).BackOn);
        Assert.Equal(UnitState.Bonded, (await UnitAsync(clinic)).State);
    }

    [Fact]
    public async Task Bonded_again_it_stays_lent_and_an_earlier_loan_of_it_stays_over()
    {
        await using var clinic = await OpenAsync();
        await clinic.LayAsync(later =>
        {
            var day = ChairScene.Today;
            var earlier = new UnitLoan(Guid.CreateVersion7(), _stock.Id, _scene.Client.Id, day.PlusDays(-60), day.PlusDays(-50));
            earlier.BringBack(day.PlusDays(-52));
            later.Db.UnitLoans.Add(earlier);
        });
        await BondAsync(clinic, _scene.Visit.Id, dueIn: 14);
        await clinic.LayAsync(_scene.BookNext);
        await BondAsync(clinic, _scene.Next.Id, dueIn: null);
        Assert.Equal([false, true], (await LoansAsync(clinic)).Select(l => l.IsOpen));

        await UndoAsync(clinic, _scene.Next.Id);

        Assert.Equal([false, true], (await LoansAsync(clinic)).Select(l => l.IsOpen));
    }

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private Task<TestClinic> OpenAsync(UnitCleaning cleaning = UnitCleaning.Clean) =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                _scene.Lay(scene);
                var since = ChairScene.Today.PlusDays(-90);
                _stock = HairSystem.AddToBook(
                    Guid.CreateVersion7(),
                    "S-1",
                    clientId: null,
                    _scene.Kind.Id,
                    UnitOrigin.ReadyMade,
                    ChairScene.Today,
                    since,
                    _scene.Salon.Id
                );
                _stock.MarkCleaning(cleaning, since, new UnitStepEntry(Guid.CreateVersion7(), ChairScene.Today, scene.Now, By: null));
                scene.Db.HairSystems.Add(_stock);
            }
        );

    private Task<Slice.Outcome> BondAsync(TestClinic clinic, Guid visit, int? dueIn, Guid? unit = null, bool cleaned = false) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(_scene.Stylist, _scene.Salon),
            async slice =>
            {
                var input = (await slice.OpenAsync(visit, Cancellation))!.Start;
                (input.FoundLifted, input.WaitsKept, input.UnitId, input.Cleaned) = (false, true, unit ?? _stock.Id, cleaned);
                input.DueBackOn = dueIn is { } days ? ChairScene.Today.PlusDays(days) : null;
                return await slice.SaveAsync(Guid.CreateVersion7(), input, Cancellation);
            }
        );

    private Task<Undo.Outcome> UndoAsync(TestClinic clinic, Guid visit) =>
        clinic.UseAsync<Undo, Undo.Outcome>(
            clinic.Acting(_scene.Stylist, _scene.Salon),
            s => s.SaveAsync(Guid.CreateVersion7(), new(visit), Cancellation)
        );

    private Task<List<UnitLoan>> LoansAsync(TestClinic clinic) =>
        clinic.ReadAsync(db => db.UnitLoans.AsNoTracking().OrderBy(l => l.LentOn).ToListAsync(Cancellation));

    private Task<HairSystem> UnitAsync(TestClinic clinic) =>
        clinic.ReadAsync(db => db.HairSystems.AsNoTracking().SingleAsync(u => u.Id == _stock.Id, Cancellation));
}
