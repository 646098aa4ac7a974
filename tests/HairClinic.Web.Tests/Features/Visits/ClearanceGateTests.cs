using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Features.Visits;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Booking = HairClinic.Web.Features.Visits.BookVisit;
using Logging = HairClinic.Web.Features.Visits.LogVisit;
using Moving = HairClinic.Web.Features.Visits.MoveVisit;
using Walking = HairClinic.Web.Features.Visits.WalkIn;

namespace HairClinic.Web.Tests.Features.Visits;

/// <summary>One rule for booking, moving, walk-ins and logs: a block is refused to whoever may not look, the rest wants a second tap.</summary>
public sealed class ClearanceGateTests(PgServer server)
{
    private const string Why = "for now this service is not to be booked";

    private readonly VisitScene _book = new();
    private readonly ChairScene _chair = new() { Purpose = ServicePurpose.FixLift };
    private Visit _visit = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(ClearanceSeverity.Warn)]
    [InlineData(ClearanceSeverity.Block)]
    public async Task The_desk_books_a_warning_on_a_second_tap_and_a_block_not_at_all(ClearanceSeverity kind)
    {
        await using var clinic = await OpenBookAsync(kind);
        var wish = new Booking.Input
        {
            SalonId = _book.Salon.Id,
            ClientId = _book.Ada.Id,
            ServiceKindId = _book.Rebond.Id,
            ChairId = _book.Chairs[0].Id,
            PersonId = _book.Mara.Id,
            StartsAt = _book.At(VisitScene.Thursday, 14),
        };

        if (kind == ClearanceSeverity.Block)
            Assert.Contains(
                Why,
                (await Assert.ThrowsAsync<Refusal>(() => SaveAsync(wish with { DespiteDoubts = true }))).Message,
                StringComparison.Ordinal
            );
        else
        {
            Assert.Equal([Doubt.AskStylistFirst], (await SaveAsync(wish)).Doubts);
            Assert.NotNull((await SaveAsync(wish with { DespiteDoubts = true })).Booked);
        }

        Task<Booking.Outcome> SaveAsync(Booking.Input input) =>
            clinic.UseAsync<Booking, Booking.Outcome>(_book.AtDesk(clinic), s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
    }

    [Fact]
    public async Task A_blocked_visit_is_moved_by_a_stylists_second_tap_and_not_by_the_desk()
    {
        await using var clinic = await OpenBookAsync(ClearanceSeverity.Block);
        var screen = (await clinic.UseAsync<Moving, Moving.Screen?>(_book.AtDesk(clinic), s => s.OpenAsync(_visit.Id, Cancel)))!;
        var input = new Moving.Input
        {
            VisitId = _visit.Id,
            Version = screen.Version,
            ChairId = _book.Chairs[0].Id,
            PersonId = _book.Mara.Id,
            StartsAt = _book.At(VisitScene.Thursday, 14),
            DespiteDoubts = true,
        };

        await Refused.SayingAsync(
            "Ask a stylist first: for now this service is not to be booked for this client.",
            () => SaveAsync(_book.AtDesk(clinic), input)
        );
        var stylist = clinic.Acting(_book.Mara, _book.Salon);
        Assert.Equal([Doubt.AskStylistFirst], (await SaveAsync(stylist, input with { DespiteDoubts = false })).Doubts);
        Assert.Equal(_book.At(VisitScene.Thursday, 9), (await VisitScene.ReadAsync(clinic, _visit.Id)).StartsAt);
        Assert.NotNull((await SaveAsync(stylist, input)).Moved);
        Assert.Contains("Ask a stylist", (await VisitScene.ReadAsync(clinic, _visit.Id)).Note!, StringComparison.Ordinal);

        Task<Moving.Outcome> SaveAsync(PersonActor who, Moving.Input wish) =>
            clinic.UseAsync<Moving, Moving.Outcome>(who, s => s.SaveAsync(Guid.CreateVersion7(), wish, Cancel));
    }

    [Fact]
    public async Task A_clearance_speaks_of_its_days_and_its_service_only()
    {
        await using var clinic = await OpenBookAsync(ClearanceSeverity.Block, until: VisitScene.Thursday.PlusDays(-1));
        var screen = (await clinic.UseAsync<Moving, Moving.Screen?>(_book.AtDesk(clinic), s => s.OpenAsync(_visit.Id, Cancel)))!;

        var moved = await clinic.UseAsync<Moving, Moving.Outcome>(
            _book.AtDesk(clinic),
            s =>
                s.SaveAsync(
                    Guid.CreateVersion7(),
                    new Moving.Input
                    {
                        VisitId = _visit.Id,
                        Version = screen.Version,
                        ChairId = _book.Chairs[0].Id,
                        PersonId = _book.Mara.Id,
                        StartsAt = _book.At(VisitScene.Thursday, 14),
                    },
                    Cancel
                )
        );

        Assert.NotNull(moved.Moved);
    }

    [Fact]
    public async Task A_walk_in_who_is_blocked_is_begun_by_whoever_looked_and_not_by_a_trainee()
    {
        Guid atTheDoor = default,
            fixLift = default;
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                _chair.Lay(s);
                var bo = s.AddClient("C-2", "Bo Larch", _chair.Salon);
                s.Book(bo, s.ServiceWithPurpose(ServicePurpose.FixLift), s.Chairs[1], _chair.Trainee, s.Now + Duration.FromDays(1));
                (atTheDoor, fixLift) = (bo.Id, s.ServiceWithPurpose(ServicePurpose.FixLift).Id);
                Lay(s, atTheDoor, ServicePurpose.FixLift, ClearanceSeverity.Block);
            }
        );
        var input = new Walking.Input { ClientId = atTheDoor, ServiceKindId = fixLift };

        var refused = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(_chair.Trainee, input with { Looked = true }));
        Assert.Contains(Why, refused.Message, StringComparison.Ordinal);
        Assert.Null((await SaveAsync(_chair.Stylist, input)).Begun);
        var begun = (await SaveAsync(_chair.Stylist, input with { Looked = true })).Begun!;

        var note = await clinic.ReadAsync(db => db.Visits.Where(v => v.Id == begun.VisitId).Select(v => v.Note).SingleAsync(Cancel));
        Assert.Contains("set aside", note!, StringComparison.Ordinal);

        Task<Walking.Outcome> SaveAsync(Person who, Walking.Input wish) =>
            clinic.UseAsync<Walking, Walking.Outcome>(
                clinic.Acting(who, _chair.Salon),
                s => s.SaveAsync(Guid.CreateVersion7(), wish, Cancel)
            );
    }

    [Theory]
    [InlineData(ClearanceSeverity.Warn, "Look at the skin first; then say that you looked.")]
    [InlineData(
        ClearanceSeverity.Block,
        "Bonding is blocked for this client. Look at the skin first; then say that you looked, or do not bond."
    )]
    public async Task An_edge_that_was_put_down_is_logged_by_whoever_looked(ClearanceSeverity kind, string sentence)
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                _chair.Lay(s);
                s.Book(
                    _chair.Client,
                    s.ServiceWithPurpose(ServicePurpose.FixLift),
                    s.Chairs[1],
                    _chair.Trainee,
                    s.Now + Duration.FromDays(1)
                );
                Lay(s, _chair.Client.Id, ServicePurpose.FixLift, kind);
            }
        );
        var screen = (await clinic.UseAsync<Logging, Logging.Screen?>(Acting(_chair.Stylist), s => s.OpenAsync(_chair.Visit.Id, Cancel)))!;
        Assert.Equal(kind, screen.Fixing);
        var input = screen.Start with { EdgeUp = true, SpotFixed = true, LiftedOn = ChairScene.Today };

        await Refused.SayingAsync(sentence, () => SaveAsync(_chair.Stylist, input));
        if (kind == ClearanceSeverity.Block)
            Assert.Contains(
                "Ask a stylist to look first",
                (await Assert.ThrowsAsync<Refusal>(() => SaveAsync(_chair.Trainee, input with { Looked = true }))).Message,
                StringComparison.Ordinal
            );
        await SaveAsync(_chair.Stylist, input with { Looked = true });

        var note = await clinic.ReadAsync(db => db.VisitRecords.Select(r => r.Note).SingleAsync(Cancel));
        Assert.Equal(kind == ClearanceSeverity.Block, note?.Contains("set aside", StringComparison.Ordinal) == true);

        PersonActor Acting(Person who) => clinic.Acting(who, _chair.Salon);
        Task<Logging.Outcome> SaveAsync(Person who, Logging.Input log) =>
            clinic.UseAsync<Logging, Logging.Outcome>(Acting(who), s => s.SaveAsync(Guid.CreateVersion7(), log, Cancel));
    }

    [Fact]
    public async Task An_edge_that_stayed_up_is_logged_whatever_is_blocked()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                _chair.Lay(s);
                Lay(s, _chair.Client.Id, ServicePurpose.FixLift, ClearanceSeverity.Block);
            }
        );
        var who = clinic.Acting(_chair.Stylist, _chair.Salon);
        var screen = (await clinic.UseAsync<Logging, Logging.Screen?>(who, s => s.OpenAsync(_chair.Visit.Id, Cancel)))!;

        var outcome = await clinic.UseAsync<Logging, Logging.Outcome>(
            who,
            s =>
                s.SaveAsync(
                    Guid.CreateVersion7(),
                    screen.Start with
                    {
                        EdgeUp = true,
                        SpotFixed = false,
                        LiftedOn = ChairScene.Today,
                    },
                    Cancel
                )
        );

        Assert.True(outcome.StillUp);
    }

    [Fact]
    public async Task A_client_whom_one_may_not_open_walks_in_to_somebody_else()
    {
        Guid stranger = default,
            wash = default;
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                _chair.Lay(s);
                (stranger, wash) = (s.AddClient("C-2", "Bo Larch", _chair.Salon).Id, s.ServiceWithPurpose(ServicePurpose.WashAndStyle).Id);
            }
        );

        var refused = await Assert.ThrowsAsync<Refusal>(() =>
            clinic.UseAsync<Walking, Walking.Outcome>(
                clinic.Acting(_chair.Trainee, _chair.Salon),
                s => s.SaveAsync(Guid.CreateVersion7(), new() { ClientId = stranger, ServiceKindId = wash }, Cancel)
            )
        );

        Assert.Contains("not in the book", refused.Message, StringComparison.Ordinal);
    }

    private Task<TestClinic> OpenBookAsync(ClearanceSeverity kind, LocalDate? until = null) =>
        TestClinic.OpenAsync(
            server,
            s =>
            {
                _book.Lay(s);
                _visit = _book.Book(s, _book.Rebond, 0, _book.Mara, _book.At(VisitScene.Thursday, 9));
                Lay(s, _visit.ClientId, ServicePurpose.Rebond, kind, until);
                if (_visit.ClientId != _book.Ada.Id)
                    Lay(s, _book.Ada.Id, ServicePurpose.Rebond, kind, until);
            }
        );

    private static void Lay(Scene scene, Guid clientId, ServicePurpose purpose, ClearanceSeverity kind, LocalDate? until = null) =>
        scene.Db.Clearances.Add(
            new Clearance(
                Guid.CreateVersion7(),
                clientId,
                Guid.CreateVersion7(),
                new ClearanceSpec(ProductId: null, purpose, ChairScene.Today, until, kind)
            )
        );
}
