using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using Microsoft.EntityFrameworkCore;
using Rebond = HairClinic.Web.Features.Visits.LogRebond.LogRebond;
using Slice = HairClinic.Web.Features.Visits.UndoLog.UndoLog;

namespace HairClinic.Web.Tests.Features.Visits.UndoLog;

public sealed class UndoLogTests(PgServer server)
{
    private ChairScene scene = new();

    [Fact]
    public async Task Taken_back_the_old_bond_is_open_again_and_the_visit_can_be_logged_anew()
    {
        await using var clinic = await TestClinic.OpenAsync(server, scene.Lay);
        await LogAsync(clinic, scene.Spare.Id);

        await UndoAsync(clinic, scene.Stylist);

        var bond = await clinic.ReadAsync(db => db.Bonds.SingleAsync(Cancellation));
        Assert.True(bond.IsOpen);
        Assert.Equal(scene.Bond!.Id, bond.Id);
        var states = await clinic.ReadAsync(db => db.HairSystems.OrderBy(u => u.Serial).Select(u => u.State).ToListAsync(Cancellation));
        Assert.Equal([UnitState.Bonded, UnitState.Accepted], states);
        await LogAsync(clinic, scene.Worn.Id);
        Assert.Equal(2, await clinic.ReadAsync(db => db.Bonds.CountAsync(Cancellation)));
    }

    [Fact]
    public async Task A_first_fitting_taken_back_leaves_a_bare_head()
    {
        scene = new ChairScene { Bonded = false, Purpose = ServicePurpose.FirstFitting };
        await using var clinic = await TestClinic.OpenAsync(server, scene.Lay);
        await LogAsync(clinic, scene.Spare.Id);

        await UndoAsync(clinic, scene.Stylist);

        Assert.Equal(0, await clinic.ReadAsync(db => db.Bonds.CountAsync(Cancellation)));
        Assert.Equal(VisitState.InChair, await clinic.ReadAsync(db => db.Visits.Select(v => v.State).SingleAsync(Cancellation)));
    }

    [Fact]
    public async Task A_colleague_may_not_take_it_back_and_tomorrow_nobody_may()
    {
        await using var clinic = await TestClinic.OpenAsync(server, scene.Lay);
        await LogAsync(clinic, scene.Worn.Id);

        await Assert.ThrowsAsync<Refusal>(() => UndoAsync(clinic, scene.Colleague));
        clinic.Clock.AdvanceDays(1);
        await Assert.ThrowsAsync<Refusal>(() => UndoAsync(clinic, scene.Stylist));
    }

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private async Task LogAsync(TestClinic clinic, Guid unit) =>
        await clinic.UseAsync<Rebond, Rebond.Outcome>(
            clinic.Acting(scene.Stylist, scene.Salon),
            async slice =>
            {
                var input = (await slice.OpenAsync(scene.Visit.Id, Cancellation))!.Start;
                (input.FoundLifted, input.WaitsKept, input.UnitId) = (false, true, unit);
                return await slice.SaveAsync(Guid.CreateVersion7(), input, Cancellation);
            }
        );

    private Task<Slice.Outcome> UndoAsync(TestClinic clinic, Person by) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(by, scene.Salon),
            s => s.SaveAsync(Guid.CreateVersion7(), new(scene.Visit.Id), Cancellation)
        );
}
