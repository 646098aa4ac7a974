using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Work;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Clients.AllowBonding;

namespace HairClinic.Web.Tests.Features.Clients.AllowBonding;

public sealed class AllowBondingTests(PgServer server)
{
    private readonly ClientScene _given = new();
    private Client _client = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Who_and_from_which_day_is_kept_with_what_has_begun_and_the_due_dates_are_worked_out_anew()
    {
        await using var clinic = await OpenClinicAsync();
        var screen = await OpenAsync(clinic);
        Assert.Equal(LifeEventKind.Operation, Assert.Single(screen.Pausing).Kind);

        await SaveAsync(clinic, _given.Stylist, Input(screen));

        Assert.Empty((await OpenAsync(clinic)).Pausing);
        var kept = await clinic.ReadAsync(db => db.LifeEvents.OrderBy(e => e.From).ToListAsync(Cancel));
        Assert.Equal([(_given.Today, _given.Stylist.Id), (null, null)], kept.Select(e => (e.BondingAgainFrom, e.BondingAgainBy)));
        Assert.Equal([WorkKind.RefreshDueDates], await clinic.ReadAsync(db => db.WorkItems.Select(w => w.Kind).ToListAsync(Cancel)));
    }

    [Fact]
    public async Task The_desk_and_trainees_do_not_say_so()
    {
        await using var clinic = await OpenClinicAsync();
        var input = Input(await OpenAsync(clinic));

        foreach (var who in new[] { _given.Desk, _given.Of(StaffRole.Trainee) })
            await Refused.SayingAsync(
                "Bonding is allowed again by the owner, a manager or a stylist. Ask one of them.",
                () => SaveAsync(clinic, who, input)
            );
        await SaveAsync(clinic, _given.Of(StaffRole.Manager), input);
    }

    [Fact]
    public async Task Not_before_it_began_and_not_where_nothing_keeps_from_bonding()
    {
        await using var clinic = await OpenClinicAsync();
        var input = Input(await OpenAsync(clinic));

        await Refused.SayingAsync(
            "Bonding cannot begin again before the event has begun, on {0}.",
            () => SaveAsync(clinic, _given.Stylist, input with { From = _given.Today.PlusDays(-9) })
        );
        await Refused.SayingAsync(
            "Nothing stops bonding any more. Open the client again.",
            () => SaveAsync(clinic, _given.Stylist, input with { EventIds = [Guid.CreateVersion7()] })
        );
        await Refused.SayingAsync(
            "This client is not there any more. They may have been merged with another record.",
            () => SaveAsync(clinic, _given.StylistThere, input)
        );
    }

    // An operation that is over, and a scan that has not come.
    private Task<TestClinic> OpenClinicAsync() =>
        TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                _client = g.Scene.AddClient("C-1", "Ada Fenwick", g.Here);
                g.Scene.Db.LifeEvents.AddRange(
                    Event(LifeEventKind.Operation, g.Today.PlusDays(-8), g.Today.PlusDays(-4)),
                    Event(LifeEventKind.Scan, g.Today.PlusDays(20), g.Today.PlusDays(20))
                );
            })
        );

    private LifeEvent Event(LifeEventKind kind, LocalDate from, LocalDate to) =>
        new(Guid.CreateVersion7(), _client.Id, kind, from, to, away: false);

    private Slice.Input Input(Slice.Screen screen) =>
        new()
        {
            ClientId = _client.Id,
            EventIds = [.. screen.Pausing.Select(e => e.Id)],
            From = _given.Today,
        };

    private async Task<Slice.Screen> OpenAsync(TestClinic clinic) =>
        (await clinic.UseAsync<Slice, Slice.Screen?>(clinic.Acting(_given.Stylist, _given.Here), s => s.OpenAsync(_client.Id, Cancel)))!;

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Person who, Slice.Input input) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(who, who == _given.StylistThere ? _given.There : _given.Here),
            s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel)
        );
}
