using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Demo.Scenes;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Visits.WalkIn;

namespace HairClinic.Web.Tests.Features.Visits.WalkIn;

public sealed class WalkInTests(PgServer server)
{
    private readonly ChairScene _scene = new();
    private Guid _atTheDoor;
    private Guid _fixLift;

    [Fact]
    public async Task A_walk_in_takes_the_first_free_chair_from_this_minute_and_is_in_it()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        clinic.Clock.Advance(Duration.FromMinutes(125) + Duration.FromSeconds(20));

        var outcome = await SaveAsync(clinic, Input());

        var visit = await clinic.ReadAsync(db => db.Visits.SingleAsync(v => v.Id == outcome.Begun!.VisitId, Cancellation));
        Assert.Equal((VisitState.InChair, _scene.Stylist.Id, "Chair 1"), (visit.State, visit.PersonId!.Value, outcome.Begun!.Chair));
        Assert.Equal(TestClinic.UsualNow + Duration.FromMinutes(125), visit.StartsAt);
    }

    [Fact]
    public async Task While_the_stylist_is_booked_elsewhere_it_holds_the_chair_and_nobodys_hands()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        var outcome = await SaveAsync(clinic, Input());

        // The first chair and the stylist are taken until half past ten.
        Assert.Equal(("Chair 2", true), (outcome.Begun!.Chair, outcome.Begun.HandsBusy));
    }

    [Fact]
    public async Task With_no_chair_free_it_is_refused_in_a_sentence()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        await clinic.LayAsync(later =>
        {
            var other = later.AddClient("C-3", "Cleo Marsh", _scene.Salon);
            var visit = new Visit(Guid.CreateVersion7(), other.Id, _scene.Salon.Id, _fixLift);
            visit.PutAt(
                [(Domain.Chairs.SegmentKind.HandsOn, 60)],
                later.Now,
                later.Db.Chairs.OrderBy(c => c.Position).Last().Id,
                null,
                _scene.Salon,
                [Guid.CreateVersion7()]
            );
            later.Db.Visits.Add(visit);
        });

        var refusal = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, Input()));

        Assert.Equal("No chair is free for the next 30 minutes. Book a later time instead.", refusal.Message);
    }

    [Fact]
    public async Task A_client_with_a_visit_today_begins_that_one()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        var refusal = await Assert.ThrowsAsync<Refusal>(() =>
            SaveAsync(clinic, new Slice.Input { ClientId = _scene.Client.Id, ServiceKindId = _fixLift })
        );

        Assert.Equal("This client has a visit today already, at 09:00. Begin that one.", refusal.Message);
    }

    [Theory]
    [InlineData("bo")]
    [InlineData("lar bo")]
    [InlineData("C-2")]
    [InlineData("0042")]
    public async Task A_client_is_found_by_name_code_or_the_end_of_the_phone(string typed)
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        var found = await clinic.UseAsync<Slice, IReadOnlyList<Slice.Found>>(
            clinic.Acting(_scene.Stylist, _scene.Salon),
            s => s.FindClientsAsync(typed, Cancellation)
        );

        Assert.Equal("Bo Larch", Assert.Single(found).Name);
    }

    [Fact]
    public async Task The_same_tap_sent_four_times_at_once_begins_one_visit()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var (key, input) = (Guid.CreateVersion7(), Input());

        var answers = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => SaveAsync(clinic, input, key)));

        Assert.Single(answers.Distinct());
    }

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private void Lay(Scene laid)
    {
        _scene.Lay(laid);
        _atTheDoor = laid.AddClient("C-2", "Bo Larch", _scene.Salon, "+441632960042").Id;
        _fixLift = laid.ServiceWithPurpose(ServicePurpose.FixLift).Id;
    }

    private Slice.Input Input() => new() { ClientId = _atTheDoor, ServiceKindId = _fixLift };

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input, Guid? key = null) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(_scene.Stylist, _scene.Salon),
            s => s.SaveAsync(key ?? Guid.CreateVersion7(), input, Cancellation)
        );
}
