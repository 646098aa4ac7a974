using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Settings.WearFactors;

namespace HairClinic.Web.Tests.Features.Settings.WearFactors;

public sealed class WearFactorsTests(PgServer server) : PracticeTest(server)
{
    [Fact]
    public async Task A_factor_is_changed_a_new_one_added_and_everything_calculated_anew()
    {
        await using var clinic = await OpenAsync();
        var input = await OpenFormAsync(clinic);
        Assert.Equal(70, input.Lines.Single(l => l.Habit == KnownCovariate.OilySkin).Percent);
        input.Lines.Single(l => l.Habit == KnownCovariate.OilySkin).Percent = 80;
        input.Lines.Single(l => l.Habit == KnownCovariate.Repaired).Percent = 60;

        var outcome = await SaveAsync(clinic, input);

        Assert.Equal(2, outcome.Changed);
        var rows = await clinic.ReadAsync(db => db.WearFactors.ToListAsync(Cancel));
        Assert.Equal(0.8, rows.Single(r => r.Habit == KnownCovariate.OilySkin).Factor, 9);
        Assert.Equal(0.6, rows.Single(r => r.Habit == KnownCovariate.Repaired).Factor, 9);
        Assert.Equal(1, await clinic.ReadAsync(db => db.WorkItems.CountAsync(w => w.Kind == WorkKind.Recalculate, Cancel)));
    }

    [Fact]
    public async Task Whoever_saves_second_is_told()
    {
        await using var clinic = await OpenAsync();
        var (first, second) = (await OpenFormAsync(clinic), await OpenFormAsync(clinic));
        first.Lines[0].Percent = 80;
        second.Lines[0].Percent = 90;
        await SaveAsync(clinic, first);

        await Assert.ThrowsAsync<OvertakenException>(() => SaveAsync(clinic, second));
    }

    private Task<Slice.Input> OpenFormAsync(TestClinic clinic) => OwnerAsync<Slice, Slice.Input>(clinic, s => s.OpenAsync(Cancel));

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        OwnerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
}
