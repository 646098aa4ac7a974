using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Features.Visits;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Allowing = HairClinic.Web.Features.Clients.AllowBonding;
using Booking = HairClinic.Web.Features.Visits.BookVisit;
using Rebonding = HairClinic.Web.Features.Visits.LogRebond;
using Walking = HairClinic.Web.Features.Visits.WalkIn;

namespace HairClinic.Web.Tests.Features.Visits;

/// <summary>Around an operation, a scan or a treatment: what the chair may log and what the desk may book.</summary>
public sealed class BondingPauseTests(PgServer server)
{
    private readonly ChairScene _chair = new();
    private readonly VisitScene _book = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task After_an_operation_no_bond_is_logged_until_somebody_records_that_bonding_may_begin_again()
    {
        await using var clinic = await OpenChairAsync(-20, length: 3);

        var input = await FilledAsync(clinic, BondingPauseDegree.Begun);
        await Refused.SayingAsync(
            "No bond for this client since {0}, until somebody allows bonding again.",
            () => LogAsync(clinic, input with { DespiteBlock = true, DespiteEvent = true })
        );
        await AllowAsync(clinic);

        await LogAsync(clinic, await FilledAsync(clinic, degree: null));
        Assert.Equal(2, await clinic.ReadAsync(db => db.Bonds.CountAsync(Cancel)));
    }

    [Fact]
    public async Task On_the_eve_of_it_no_bond_is_logged()
    {
        await using var clinic = await OpenChairAsync(1, length: 0);
        var input = await FilledAsync(clinic, BondingPauseDegree.Eve);

        await Refused.SayingAsync(
            "No bond any more: the unit has to be off before {0}.",
            () => LogAsync(clinic, input with { DespiteEvent = true })
        );
    }

    [Fact]
    public async Task Some_days_before_it_a_bond_is_logged_for_whoever_wants_it()
    {
        await using var clinic = await OpenChairAsync(3, length: 0);
        var input = await FilledAsync(clinic, BondingPauseDegree.Soon);

        await Refused.SayingAsync(
            "This bond would have to come off again before {0}. Say that it is wanted all the same, or do not bond.",
            () => LogAsync(clinic, input)
        );
        var outcome = await LogAsync(clinic, input with { DespiteEvent = true });

        // The new bond's next date is its take-down, on the eve.
        Assert.Equal(ChairScene.Today.PlusDays(2), outcome.DueOn);
    }

    [Theory]
    [InlineData(-10, true)]
    [InlineData(1, false)]
    public async Task The_desk_books_no_bond_while_it_lasts_and_one_shortly_before_on_a_second_tap(int days, bool refused)
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                _book.Lay(s);
                Plan(s, _book.Ada, VisitScene.Thursday.PlusDays(days), length: 2);
            }
        );
        var wish = new Booking.Input
        {
            SalonId = _book.Salon.Id,
            ClientId = _book.Ada.Id,
            ServiceKindId = _book.Rebond.Id,
            ChairId = _book.Chairs[0].Id,
            PersonId = _book.Mara.Id,
            StartsAt = _book.At(VisitScene.Thursday, 14),
        };

        if (refused)
        {
            await Refused.SayingAsync(
                "Ask a stylist first: for now this service is not to be booked for this client.",
                () => SaveAsync(wish with { DespiteDoubts = true })
            );
            return;
        }
        Assert.Equal([Doubt.AskStylistFirst], (await SaveAsync(wish)).Doubts);
        Assert.NotNull((await SaveAsync(wish with { DespiteDoubts = true })).Booked);

        Task<Booking.Outcome> SaveAsync(Booking.Input input) =>
            clinic.UseAsync<Booking, Booking.Outcome>(_book.AtDesk(clinic), s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
    }

    [Fact]
    public async Task A_walk_in_to_be_bonded_is_begun_by_whoever_may_look_on_a_second_tap()
    {
        Guid bo = default,
            rebond = default;
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                _chair.Lay(s);
                var client = s.AddClient("C-2", "Bo Larch", _chair.Salon);
                s.Book(client, s.ServiceWithPurpose(ServicePurpose.Rebond), s.Chairs[1], _chair.Trainee, s.Now + Duration.FromDays(1));
                Plan(s, client, ChairScene.Today.PlusDays(-4), length: 1);
                (bo, rebond) = (client.Id, s.ServiceWithPurpose(ServicePurpose.Rebond).Id);
            }
        );

        await Refused.SayingAsync(
            "Ask a stylist first: for now this service is not to be booked for this client.",
            () => SaveAsync(_chair.Trainee, rebond)
        );
        Assert.Null((await SaveAsync(_chair.Stylist, rebond)).Begun);

        Task<Walking.Outcome> SaveAsync(Person who, Guid service) =>
            clinic.UseAsync<Walking, Walking.Outcome>(
                clinic.Acting(who, _chair.Salon),
                s => s.SaveAsync(Guid.CreateVersion7(), new() { ClientId = bo, ServiceKindId = service }, Cancel)
            );
    }

    private Task<TestClinic> OpenChairAsync(int days, int length) =>
        TestClinic.OpenAsync(
            server,
            s =>
            {
                _chair.Lay(s);
                Plan(s, _chair.Client, ChairScene.Today.PlusDays(days), length);
            }
        );

    private static void Plan(Scene scene, Client client, LocalDate from, int length) =>
        scene.Db.LifeEvents.Add(
            new LifeEvent(Guid.CreateVersion7(), client.Id, LifeEventKind.Operation, from, from.PlusDays(length), away: true)
        );

    private async Task<Rebonding.Input> FilledAsync(TestClinic clinic, BondingPauseDegree? degree)
    {
        var screen = (
            await clinic.UseAsync<Rebonding, Rebonding.Screen?>(
                clinic.Acting(_chair.Stylist, _chair.Salon),
                s => s.OpenAsync(_chair.Visit.Id, Cancel)
            )
        )!;
        Assert.Equal(degree, screen.Pause?.Degree);
        Assert.True(screen.MayAllowBonding);
        return screen.Start with { FoundLifted = false, WaitsKept = true };
    }

    private Task<Rebonding.Outcome> LogAsync(TestClinic clinic, Rebonding.Input input) =>
        clinic.UseAsync<Rebonding, Rebonding.Outcome>(
            clinic.Acting(_chair.Stylist, _chair.Salon),
            s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel)
        );

    private Task<Allowing.Outcome> AllowAsync(TestClinic clinic) =>
        clinic.UseAsync<Allowing, Allowing.Outcome>(
            clinic.Acting(_chair.Stylist, _chair.Salon),
            async s =>
            {
                var screen = (await s.OpenAsync(_chair.Client.Id, Cancel))!;
                return await s.SaveAsync(
                    Guid.CreateVersion7(),
                    new()
                    {
                        ClientId = _chair.Client.Id,
                        EventIds = [.. screen.Pausing.Select(e => e.Id)],
                        From = screen.Today,
                    },
                    Cancel
                );
            }
        );
}
