using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Visits;
using Microsoft.EntityFrameworkCore;
using Rebond = HairClinic.Web.Features.Visits.LogRebond;
using Slice = HairClinic.Web.Features.Visits.UndoVisitLog;
using TakenDown = HairClinic.Web.Features.Visits.LogTakeDown;

namespace HairClinic.Web.Tests.Features.Visits.UndoVisitLog;

/// <summary>A take-down without a new bond, taken back on the same day.</summary>
public sealed class UndoTakeDownTests(PgServer server)
{
    private readonly ChairScene _scene = new();
    private Product _remover = null!;

    [Theory]
    [InlineData(RemovalReason.Skin)]
    [InlineData(RemovalReason.BroughtIn)]
    [InlineData(RemovalReason.LostAtHome)]
    public async Task Taken_back_the_bond_is_on_the_head_and_the_unit_bonded_again(RemovalReason because)
    {
        await using var clinic = await OpenAsync();
        await LogAsync(clinic, because);

        await UndoAsync(clinic);

        var bond = await clinic.ReadAsync(db => db.Bonds.SingleAsync(Cancellation));
        Assert.True(bond.IsOpen);
        Assert.Equal((null, null), (bond.Lift, bond.NoBondUntil));
        var unit = await clinic.ReadAsync(db => db.HairSystems.SingleAsync(u => u.Id == _scene.Worn.Id, Cancellation));
        Assert.Equal((UnitState.Bonded, null, null), (unit.State, unit.Dates.RetiredOn, unit.RetiredBecause));
        Assert.Equal(VisitState.InChair, await clinic.ReadAsync(db => db.Visits.Select(v => v.State).SingleAsync(Cancellation)));
        Assert.Equal(0, await clinic.ReadAsync(db => db.VisitRecords.CountAsync(Cancellation)));
    }

    [Fact]
    public async Task What_was_written_is_in_the_form_again_with_its_products()
    {
        await using var clinic = await OpenAsync();
        await LogAsync(clinic, RemovalReason.Skin);

        await UndoAsync(clinic);

        Assert.Equal(0, await clinic.ReadAsync(db => db.TakeDownProducts.CountAsync(Cancellation)));
        var again = (await AsStylistAsync<TakenDown, TakenDown.Screen?>(clinic, s => s.OpenAsync(_scene.Visit.Id, Cancellation)))!.Draft!;
        Assert.Equal(
            (RemovalReason.Skin, false, "red at the nape", 2, ChairScene.Today.PlusDays(7)),
            (again.Because, again.FoundLifted, again.Note, again.Knots, again.NoBondUntil)
        );
        Assert.Equal([(_remover.Id, _remover.Lots[0].Id)], again.Products.Select(p => (p.ProductId, p.LotId!.Value)));
        await AsStylistAsync<TakenDown, TakenDown.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), again, Cancellation));
        Assert.Equal(1, await clinic.ReadAsync(db => db.TakeDownProducts.CountAsync(Cancellation)));
    }

    [Fact]
    public async Task What_goes_is_said_before()
    {
        await using var clinic = await OpenAsync();
        await LogAsync(clinic, RemovalReason.Skin);

        var asked = await AskAsync(clinic);

        Assert.Equal(
            new Slice.Screen(null, Note: true, Grades: true, Lift: false, Waits: false, Serial: null)
            {
                Off = _scene.Worn.Serial,
                Until = true,
            },
            asked
        );
        Assert.False(await clinic.ReadAsync(db => db.Bonds.AnyAsync(b => b.RemovedOn == null, Cancellation)));
    }

    [Fact]
    public async Task Once_the_head_is_bonded_again_the_take_down_stands_also_after_that_bond_came_off()
    {
        const string Since = "This head was bonded again since. Take that log back first.";
        await using var clinic = await OpenAsync();
        await clinic.LayAsync(_scene.BookNext);
        await LogAsync(clinic, RemovalReason.Rest);
        clinic.Clock.Advance(NodaTime.Duration.FromMinutes(30));
        await AsStylistAsync<Rebond, Rebond.Outcome>(
            clinic,
            async slice =>
            {
                var input = (await slice.OpenAsync(_scene.Next.Id, Cancellation))!.Start;
                input.WaitsKept = true;
                return await slice.SaveAsync(Guid.CreateVersion7(), input, Cancellation);
            }
        );

        Assert.Equal(Since, (await AskAsync(clinic)).WhyNot!.Sentence);
        await Refused.SayingAsync(Since, () => UndoAsync(clinic));
        await clinic.ReadAsync(async db =>
        {
            (await db.Bonds.SingleAsync(b => b.RemovedOn == null, Cancellation)).Remove(ChairScene.Today, RemovalReason.Other);
            return await db.SaveChangesAsync(Cancellation);
        });
        await Refused.SayingAsync(Since, () => UndoAsync(clinic));
    }

    [Fact]
    public async Task A_rebond_after_the_unit_came_off_at_home_is_taken_back_with_its_day()
    {
        await using var clinic = await OpenAsync();
        await AsStylistAsync<Rebond, Rebond.Outcome>(
            clinic,
            async slice =>
            {
                var input = (await slice.OpenAsync(_scene.Visit.Id, Cancellation))!.Start;
                (input.Because, input.LiftedOn, input.WaitsKept) = (RemovalReason.LostAtHome, ChairScene.Today.PlusDays(-2), true);
                input.UnitId = _scene.Spare.Id;
                return await slice.SaveAsync(Guid.CreateVersion7(), input, Cancellation);
            }
        );
        Assert.Equal(ChairScene.Today.PlusDays(-2), (await BondOfWornAsync(clinic)).RemovedOn);

        await UndoAsync(clinic);

        Assert.True((await BondOfWornAsync(clinic)).IsOpen);
        var states = await clinic.ReadAsync(db => db.HairSystems.OrderBy(u => u.Serial).Select(u => u.State).ToListAsync(Cancellation));
        Assert.Equal([UnitState.Bonded, UnitState.Accepted], states);
    }

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private Task<TestClinic> OpenAsync() =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                _scene.Lay(scene);
                _remover = scene.AddProduct("Remover R", ProductKind.Remover, "citrus", "R-1");
            }
        );

    private Task<Bond> BondOfWornAsync(TestClinic clinic) =>
        clinic.ReadAsync(db => db.Bonds.AsNoTracking().SingleAsync(b => b.HairSystemId == _scene.Worn.Id, Cancellation));

    private async Task<Slice.Screen> AskAsync(TestClinic clinic) =>
        (await AsStylistAsync<Slice, IReadOnlyDictionary<Guid, Slice.Screen>>(clinic, s => s.OpenAsync([_scene.Visit.Id], Cancellation)))[
            _scene.Visit.Id
        ];

    private Task<T> AsStylistAsync<TSlice, T>(TestClinic clinic, Func<TSlice, Task<T>> call)
        where TSlice : notnull => clinic.UseAsync(clinic.Acting(_scene.Stylist, _scene.Salon), call);

    private async Task LogAsync(TestClinic clinic, RemovalReason because) =>
        await AsStylistAsync<TakenDown, TakenDown.Outcome>(
            clinic,
            async slice =>
            {
                var input = (await slice.OpenAsync(_scene.Visit.Id, Cancellation))!.Start;
                (input.Because, input.FoundLifted, input.Knots, input.Note) = (because, false, 2, "red at the nape");
                input.NoBondUntil = ChairScene.Today.PlusDays(7);
                input.Products.Add(new Rebond.ProductLine { ProductId = _remover.Id, LotId = _remover.Lots[0].Id });
                return await slice.SaveAsync(Guid.CreateVersion7(), input, Cancellation);
            }
        );

    private Task<Slice.Outcome> UndoAsync(TestClinic clinic) =>
        AsStylistAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), new(_scene.Visit.Id), Cancellation));
}
