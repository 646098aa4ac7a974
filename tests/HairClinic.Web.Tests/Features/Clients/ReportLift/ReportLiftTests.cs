using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Clients.ReportLift;

namespace HairClinic.Web.Tests.Features.Clients.ReportLift;

public sealed class ReportLiftTests(PgServer server)
{
    private readonly ClientScene _given = new();
    private Client _client = null!;
    private Bond _bond = null!;

    [Fact]
    public async Task The_day_and_the_zone_are_the_hold_and_the_bond_stays_on_after_a_spot_fix()
    {
        await using var clinic = await OpenClinicAsync();

        await SaveAsync(clinic, Input() with { LiftedOn = _given.Today.PlusDays(-2), Zone = LiftZone.Nape, SpotFixed = true });

        var kept = await BondAsync(clinic);
        Assert.Equal(new Lift(_given.Today, _given.Today.PlusDays(-2), LiftZone.Nape, SpotFixed: true), kept.Lift);
        Assert.True(kept.IsOpen);
    }

    [Fact]
    public async Task A_day_nobody_knows_stays_unknown()
    {
        await using var clinic = await OpenClinicAsync();

        await SaveAsync(clinic, Input() with { LiftedSince = SinceWhen.NotKnown });

        Assert.Null((await BondAsync(clinic)).Lift!.LiftedOn);
    }

    [Fact]
    public async Task About_when_is_kept_as_the_days_it_means()
    {
        await using var clinic = await OpenClinicAsync();

        await SaveAsync(clinic, Input() with { LiftedSince = SinceWhen.AboutAWeek });

        var lift = (await BondAsync(clinic)).Lift!;
        Assert.Equal((null, _given.Today.PlusDays(-9), _given.Today.PlusDays(-5)), (lift.LiftedOn, lift.EarliestOn, lift.LatestOn));
    }

    [Fact]
    public async Task The_same_tap_sent_twice_notes_one_lift()
    {
        await using var clinic = await OpenClinicAsync();
        var key = Guid.CreateVersion7();

        var one = await SaveAsync(clinic, Input() with { LiftedSince = SinceWhen.NotKnown }, key);
        var two = await SaveAsync(clinic, Input() with { LiftedSince = SinceWhen.NotKnown }, key);

        Assert.Equal(one, two);
    }

    [Fact]
    public async Task A_second_report_is_refused_since_only_the_first_lift_ends_the_hold()
    {
        await using var clinic = await OpenClinicAsync();
        await SaveAsync(clinic, Input() with { LiftedSince = SinceWhen.NotKnown });

        var refusal = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, Input() with { LiftedOn = _given.Today }));

        Assert.StartsWith("A lift of this bond was noted on", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_lift_before_the_bond_is_refused()
    {
        await using var clinic = await OpenClinicAsync();

        await Refused.SayingAsync(
            "A bond cannot lift before it was made, on {0}.",
            () => SaveAsync(clinic, Input() with { LiftedOn = _bond.AppliedOn.PlusDays(-1) })
        );
    }

    [Fact]
    public async Task The_screen_knows_the_bond_and_the_service_to_book()
    {
        await using var clinic = await OpenClinicAsync();

        var screen = await OpenAsync(clinic);

        Assert.Equal(_bond.Id, screen!.Worn!.BondId);
        Assert.Equal(_given.Scene.ServiceWithPurpose(ServicePurpose.FixLift).Id, screen.FixLift);
        Assert.Single(clinic.Commands.All);
    }

    [Fact]
    public async Task The_lift_of_a_client_of_another_salon_cannot_be_reported()
    {
        await using var clinic = await OpenClinicAsync();

        var theirs = clinic.Acting(_given.DeskThere, _given.There);

        Assert.Null(
            await clinic.UseAsync<Slice, Slice.Screen?>(theirs, s => s.OpenAsync(_client.Id, TestContext.Current.CancellationToken))
        );
        await Refused.SayingAsync(
            "This bond was taken off in the meantime. Open the client again.",
            () =>
                clinic.UseAsync<Slice, Slice.Outcome>(
                    theirs,
                    s => s.SaveAsync(Guid.CreateVersion7(), Input(), TestContext.Current.CancellationToken)
                )
        );
    }

    private Task<TestClinic> OpenClinicAsync() =>
        TestClinic.OpenAsync(server, _given.Laying(g => (_client, _, _bond) = g.Wearing("C-1", "Ada Fenwick", 12)));

    private Slice.Input Input() =>
        new()
        {
            ClientId = _client.Id,
            BondId = _bond.Id,
            SpotFixed = false,
        };

    private Task<Bond> BondAsync(TestClinic clinic) =>
        clinic.ReadAsync(db => db.Bonds.AsNoTracking().SingleAsync(b => b.Id == _bond.Id, TestContext.Current.CancellationToken));

    private Task<Slice.Screen?> OpenAsync(TestClinic clinic) =>
        clinic.UseAsync<Slice, Slice.Screen?>(
            clinic.Acting(_given.Desk, _given.Here),
            s => s.OpenAsync(_client.Id, TestContext.Current.CancellationToken)
        );

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input, Guid? key = null) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(_given.Desk, _given.Here),
            s => s.SaveAsync(key ?? Guid.CreateVersion7(), input, TestContext.Current.CancellationToken)
        );
}
