using HairClinic.Domain.Bonding;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Wear;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.MyHair.MyBondHasLifted;

namespace HairClinic.Web.Tests.Features.MyHair.MyBondHasLifted;

public sealed class MyBondHasLiftedTests(PgServer server)
{
    private readonly OwnScene _own = new();

    [Fact]
    public async Task A_lift_told_by_the_client_is_the_hold_data_the_desk_would_write_and_offers_times_at_once()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);
        var input = new Slice.Input
        {
            Key = Guid.CreateVersion7(),
            LiftedOn = new LocalDate(2027, 2, 2),
            Zone = LiftZone.Temples,
        };

        await SaveAsync(clinic, input);
        await SaveAsync(clinic, input);

        var bond = await clinic.ReadAsync(db => db.Bonds.SingleAsync(b => b.Id == _own.Bond.Id, Cancel));
        Assert.Equal(new Lift(new LocalDate(2027, 2, 3), new LocalDate(2027, 2, 2), LiftZone.Temples, SpotFixed: false), bond.Lift);
        var screen = await OpenAsync(clinic);
        Assert.NotEmpty(screen!.Slots);
        Assert.Equal(new LocalDate(2027, 2, 3), screen.Slots[0].Local.Date);
    }

    [Fact]
    public async Task About_when_narrows_what_is_known_of_the_hold()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);

        await SaveAsync(clinic, new() { Key = Guid.CreateVersion7(), LiftedSince = SinceWhen.TwoOrThreeDays });

        var bond = await clinic.ReadAsync(db => db.Bonds.SingleAsync(b => b.Id == _own.Bond.Id, Cancel));
        Assert.Equal((new LocalDate(2027, 1, 31), new LocalDate(2027, 2, 1)), (bond.Lift!.EarliestOn, bond.Lift.LatestOn));
        Assert.Equal(new HoldObservation(HoldCensoring.Between, 11, 12), HoldObservation.From(bond, new LocalDate(2027, 2, 3)));
    }

    [Fact]
    public async Task A_day_before_the_bond_was_made_is_refused()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);

        await Refused.SayingAsync(
            "A bond cannot lift before it was made, on {0}.",
            () => SaveAsync(clinic, new() { Key = Guid.CreateVersion7(), LiftedOn = new LocalDate(2027, 1, 19) })
        );
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private Task<Slice.Screen?> OpenAsync(TestClinic clinic) =>
        clinic.UseAsync<Slice, Slice.Screen?>(_own.Acting(clinic), slice => slice.OpenAsync(Cancel));

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        clinic.UseAsync<Slice, Slice.Outcome>(_own.Acting(clinic), slice => slice.SaveAsync(input, Cancel));
}
