using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using CardSlice = HairClinic.Web.Features.Clients.Card;
using Slice = HairClinic.Web.Features.Clients.WhoMaySee;

namespace HairClinic.Web.Tests.Features.Clients.WhoMaySee;

public sealed class WhoMaySeeTests(PgServer server)
{
    private readonly ClientScene _given = new();
    private Client _client = null!;

    [Fact]
    public async Task Another_salon_is_let_in_until_a_day_and_no_longer()
    {
        await using var clinic = await OpenClinicAsync();
        Assert.Null(await CardAsync(clinic));

        await SaveAsync(clinic, clinic.Acting(_given.Desk, _given.Here), _given.Today.PlusDays(7));

        Assert.NotNull(await CardAsync(clinic));
        var line = Assert.Single((await OpenAsync(clinic))!.Lines);
        Assert.Equal(("Quay", GrantReason.Granted, _given.Today.PlusDays(7), "Desk"), (line.Who, line.Reason, line.Until, line.By));
        clinic.Clock.Advance(Duration.FromDays(9));
        Assert.Null(await CardAsync(clinic));
    }

    [Fact]
    public async Task The_card_tells_whoever_was_let_in_apart_from_the_home_salon()
    {
        await using var clinic = await OpenClinicAsync();
        await SaveAsync(clinic, clinic.Acting(_given.Desk, _given.Here), _given.Today.PlusDays(7));

        async Task<bool> AtHomeAsync(PersonActor person) =>
            (
                await clinic.UseAsync<CardSlice, CardSlice.Opened>(
                    person,
                    s => s.OpenAsync(_client.Id, TestContext.Current.CancellationToken)
                )
            )
                .Screen!
                .AtHome;
        Assert.True(await AtHomeAsync(clinic.Acting(_given.Desk, _given.Here)));
        Assert.True(await AtHomeAsync(clinic.Acting(_given.Of(StaffRole.Owner))));
        Assert.False(await AtHomeAsync(clinic.Acting(_given.DeskThere, _given.There)));
    }

    [Fact]
    public async Task What_was_granted_is_taken_back_at_once()
    {
        await using var clinic = await OpenClinicAsync();
        await SaveAsync(clinic, clinic.Acting(_given.Desk, _given.Here), _given.Today.PlusDays(7));
        var line = Assert.Single((await OpenAsync(clinic))!.Lines);

        await clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(_given.Desk, _given.Here),
            s => s.TakeBackAsync(Guid.CreateVersion7(), new(_client.Id, line.GrantId), TestContext.Current.CancellationToken)
        );

        Assert.Null(await CardAsync(clinic));
        Assert.Empty((await OpenAsync(clinic))!.Lines);
    }

    [Fact]
    public async Task Letting_in_opening_and_ending_are_each_noted_once_and_the_home_salons_own_opening_is_not()
    {
        await using var clinic = await OpenClinicAsync();
        await SaveAsync(clinic, clinic.Acting(_given.Desk, _given.Here), _given.Today.PlusDays(7));
        await CardAsync(clinic);
        await clinic.UseAsync<CardSlice, CardSlice.Opened>(
            clinic.Acting(_given.Desk, _given.Here),
            s => s.OpenAsync(_client.Id, TestContext.Current.CancellationToken)
        );
        var line = Assert.Single((await OpenAsync(clinic))!.Lines);
        await clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(_given.Desk, _given.Here),
            s => s.TakeBackAsync(Guid.CreateVersion7(), new(_client.Id, line.GrantId), TestContext.Current.CancellationToken)
        );
        await CardAsync(clinic);

        Assert.Equal(
            [
                (AccessAction.GrantedSalon, _given.Desk.Id, _given.There.Id),
                (AccessAction.OpenedCardByGrant, _given.DeskThere.Id, null),
                (AccessAction.EndedGrant, _given.Desk.Id, _given.There.Id),
            ],
            await NotesAsync(clinic)
        );
    }

    [Fact]
    public async Task Letting_in_that_is_refused_leaves_no_note()
    {
        await using var clinic = await OpenClinicAsync();
        await SaveAsync(clinic, clinic.Acting(_given.Desk, _given.Here), _given.Today.PlusDays(7));

        await Refused.SayingAsync(
            "This is not yours to change. Ask somebody of the client's own salon, or a manager.",
            () => SaveAsync(clinic, clinic.Acting(_given.DeskThere, _given.There), _given.Today.PlusDays(90))
        );

        Assert.Single(await NotesAsync(clinic));
    }

    [Fact]
    public async Task Whoever_was_let_in_cannot_let_others_in()
    {
        await using var clinic = await OpenClinicAsync();
        await SaveAsync(clinic, clinic.Acting(_given.Desk, _given.Here), _given.Today.PlusDays(7));

        await Refused.SayingAsync(
            "This is not yours to change. Ask somebody of the client's own salon, or a manager.",
            () => SaveAsync(clinic, clinic.Acting(_given.DeskThere, _given.There), _given.Today.PlusDays(90))
        );
    }

    [Fact]
    public async Task A_day_that_is_past_is_refused()
    {
        await using var clinic = await OpenClinicAsync();

        await Refused.SayingAsync(
            "The last day lies before today.",
            () => SaveAsync(clinic, clinic.Acting(_given.Desk, _given.Here), _given.Today.PlusDays(-1))
        );
    }

    [Fact]
    public async Task A_visit_booked_in_another_salon_lets_it_in_and_calling_it_off_ends_that()
    {
        var rebond = default(HairClinic.Domain.Visits.Visit)!;
        await using var clinic = await OpenClinicAsync();
        await clinic.LayAsync(scene =>
        {
            rebond = new(Guid.CreateVersion7(), _client.Id, _given.There.Id, _given.Scene.Services[0].Id);
            rebond.PutAt(
                [(HairClinic.Domain.Chairs.SegmentKind.HandsOn, 60)],
                scene.Now + Duration.FromDays(3),
                _given.Scene.Chairs.Single(c => c.SalonId == _given.There.Id).Id,
                _given.DeskThere.Id,
                _given.There,
                [Guid.CreateVersion7()]
            );
            scene.Db.Visits.Add(rebond);
        });

        Assert.NotNull(await CardAsync(clinic));
        Assert.Equal(GrantReason.Visit, Assert.Single((await OpenAsync(clinic))!.Lines).Reason);
        await clinic.LayAsync(scene => scene.Db.Visits.Single(v => v.Id == rebond.Id).Cancel());
        Assert.Null(await CardAsync(clinic));
    }

    private Task<TestClinic> OpenClinicAsync() =>
        TestClinic.OpenAsync(server, _given.Laying(g => _client = g.Scene.AddClient("C-1", "Ada Fenwick", g.Here)));

    private Task<Slice.Screen?> OpenAsync(TestClinic clinic) =>
        clinic.UseAsync<Slice, Slice.Screen?>(
            clinic.Acting(_given.Desk, _given.Here),
            s => s.OpenAsync(_client.Id, TestContext.Current.CancellationToken)
        );

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, PersonActor by, LocalDate until) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            by,
            s =>
                s.SaveAsync(
                    Guid.CreateVersion7(),
                    new()
                    {
                        ClientId = _client.Id,
                        SalonId = _given.There.Id,
                        Until = until,
                        Because = "On holiday there",
                    },
                    TestContext.Current.CancellationToken
                )
        );

    private Task<List<(AccessAction, Guid?, Guid?)>> NotesAsync(TestClinic clinic) =>
        clinic.ReadAsync(async db =>
            (
                await db
                    .AccessNotes.Where(n => n.ClientId == _client.Id)
                    .OrderBy(n => n.Number)
                    .ToListAsync(TestContext.Current.CancellationToken)
            ).ConvertAll(n => (n.Action, n.ActorId, n.SubjectId))
        );

    private async Task<CardSlice.Screen?> CardAsync(TestClinic clinic) =>
        (
            await clinic.UseAsync<CardSlice, CardSlice.Opened>(
                clinic.Acting(_given.DeskThere, _given.There),
                s => s.OpenAsync(_client.Id, TestContext.Current.CancellationToken)
            )
        ).Screen;
}
