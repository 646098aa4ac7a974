using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Features.MyHair;
using HairClinic.Web.Tests.Features.Visits;
using Microsoft.EntityFrameworkCore;
using Choosing = HairClinic.Web.Features.MyHair.ChooseATime;
using Moving = HairClinic.Web.Features.MyHair.MoveMyTime;

namespace HairClinic.Web.Tests.Features.MyHair;

/// <summary>A client whose salon wants a word first is told to ring, and nothing of why.</summary>
public sealed class SelfBookingSlotsTests(PgServer server)
{
    private const string Ring = "Please ring us: we find you a place.";

    private readonly OwnScene _own = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_is_blocked_is_neither_offered_nor_booked_and_other_services_are()
    {
        await using var clinic = await OpenAsync(ClearanceSeverity.Block);
        var wash = await clinic.ReadAsync(db =>
            db.ServiceKinds.Where(k => k.Purpose == ServicePurpose.WashAndStyle).Select(k => k.Id).FirstAsync(Cancel)
        );

        var screen = await ChooseAsync(clinic, _own.Rebond.Id);
        var other = await ChooseAsync(clinic, wash);

        Assert.Equal((true, 0), (screen.Ring, screen.Slots.Count));
        Assert.False(other.Ring);
        Assert.NotEmpty(other.Slots);
        Assert.Equal(Ring, (await Assert.ThrowsAsync<Refusal>(() => BookAsync(clinic))).Message);
    }

    [Fact]
    public async Task A_blocked_visit_is_not_moved_by_the_client()
    {
        await using var clinic = await OpenAsync(ClearanceSeverity.Block);
        var input = new Moving.Input
        {
            Key = Guid.CreateVersion7(),
            Visit = _own.Visit.Id,
            At = OwnScene.FreeAt,
        };

        var screen = await clinic.UseAsync<Moving, Moving.Screen?>(_own.Acting(clinic), s => s.OpenAsync(_own.Visit.Id, null, Cancel));
        var refused = await Assert.ThrowsAsync<Refusal>(() =>
            clinic.UseAsync<Moving, SelfBookingOutcome?>(_own.Acting(clinic), s => s.SaveAsync(input, Cancel))
        );

        Assert.Equal((true, 0), (screen!.Ring, screen.Slots.Count));
        Assert.Equal(Ring, refused.Message);
        Assert.Equal(
            OwnScene.BookedAt,
            await clinic.ReadAsync(db => db.Visits.Where(v => v.Id == _own.Visit.Id).Select(v => v.StartsAt).SingleAsync(Cancel))
        );
    }

    [Fact]
    public async Task A_warning_is_the_salons_to_look_at_and_keeps_no_client_from_booking()
    {
        await using var clinic = await OpenAsync(ClearanceSeverity.Warn);

        Assert.False((await ChooseAsync(clinic, _own.Rebond.Id)).Ring);
        Assert.NotNull((await BookAsync(clinic)).At);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)] // such a client reads no events, and they count all the same
    public async Task Who_was_operated_on_rings_until_somebody_records_that_bonding_may_begin_again(bool confirmed)
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                _own.Lay(s);
                if (!confirmed)
                    s.LeaveUnconfirmed(_own.Client);
                var on = ChairScene.Today.PlusDays(-30);
                s.Db.LifeEvents.Add(new LifeEvent(Guid.CreateVersion7(), _own.Client.Id, LifeEventKind.Operation, on, on, away: true));
            }
        );

        Assert.True((await ChooseAsync(clinic, _own.Rebond.Id)).Ring);
        await Refused.SayingAsync(Ring, () => BookAsync(clinic));

        await clinic.LayAsync(s => s.Db.LifeEvents.Single().AllowBondingAgain(ChairScene.Today, by: null));
        Assert.False((await ChooseAsync(clinic, _own.Rebond.Id)).Ring);
    }

    private Task<SelfBookingOutcome> BookAsync(TestClinic clinic) =>
        clinic.UseAsync<Choosing, SelfBookingOutcome>(
            _own.Acting(clinic),
            s =>
                s.SaveAsync(
                    new()
                    {
                        Key = Guid.CreateVersion7(),
                        Service = _own.Rebond.Id,
                        At = OwnScene.FreeAt,
                    },
                    Cancel
                )
        );

    private async Task<Choosing.Screen> ChooseAsync(TestClinic clinic, Guid service) =>
        (await clinic.UseAsync<Choosing, Choosing.Screen?>(_own.Acting(clinic), s => s.OpenAsync(service, null, null, Cancel)))!;

    private Task<TestClinic> OpenAsync(ClearanceSeverity kind) =>
        TestClinic.OpenAsync(
            server,
            s =>
            {
                _own.Lay(s);
                s.Db.Clearances.Add(
                    new Clearance(
                        Guid.CreateVersion7(),
                        _own.Client.Id,
                        Guid.CreateVersion7(),
                        new ClearanceSpec(ProductId: null, ServicePurpose.Rebond, ChairScene.Today, Until: null, kind)
                    )
                );
            }
        );
}
