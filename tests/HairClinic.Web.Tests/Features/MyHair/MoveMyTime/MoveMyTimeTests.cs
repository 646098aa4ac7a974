using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Features.MyHair;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.MyHair.MoveMyTime;

namespace HairClinic.Web.Tests.Features.MyHair.MoveMyTime;

public sealed class MoveMyTimeTests(PgServer server)
{
    private readonly OwnScene _own = new();

    [Fact]
    public async Task A_client_moves_their_own_visit_and_a_second_tap_changes_nothing()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);
        var input = new Slice.Input
        {
            Key = Guid.CreateVersion7(),
            Visit = _own.Visit.Id,
            Version = _own.Visit.Version,
            At = OwnScene.FreeAt,
        };

        var first = await SaveAsync(clinic, input);
        var second = await SaveAsync(clinic, input);

        Assert.Equal(new LocalDateTime(2027, 2, 12, 14, 0), first!.At);
        Assert.Equal(first.At, second!.At);
        var moved = await clinic.ReadAsync(db => db.Visits.Include(v => v.Segments).SingleAsync(v => v.Id == _own.Visit.Id, Cancel));
        Assert.Equal(OwnScene.FreeAt, moved.StartsAt);
        Assert.Equal(OwnScene.FreeAt + Duration.FromMinutes(90), moved.EndsAt);
        Assert.Single(moved.Segments);
    }

    [Fact]
    public async Task Somebody_elses_visit_is_not_found()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);

        Assert.Null(await clinic.UseAsync<Slice, Slice.Screen?>(_own.Acting(clinic), s => s.OpenAsync(_own.OthersVisit.Id, null, Cancel)));
        Assert.Null(
            await SaveAsync(
                clinic,
                new()
                {
                    Key = Guid.CreateVersion7(),
                    Visit = _own.OthersVisit.Id,
                    At = OwnScene.FreeAt,
                }
            )
        );
        Assert.Equal(
            OwnScene.BookedAt + Duration.FromHours(2),
            await clinic.ReadAsync(db => db.Visits.Where(v => v.Id == _own.OthersVisit.Id).Select(v => v.StartsAt).SingleAsync(Cancel))
        );
    }

    [Fact]
    public async Task A_place_that_is_taken_keeps_the_visit_where_it_is_and_offers_the_nearest()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);

        var answer = await SaveAsync(
            clinic,
            new()
            {
                Key = Guid.CreateVersion7(),
                Visit = _own.Visit.Id,
                Version = _own.Visit.Version,
                At = OwnScene.BookedAt + Duration.FromHours(2),
            }
        );

        Assert.Null(answer!.At);
        Assert.NotEmpty(answer.Nearest);
    }

    [Fact]
    public async Task An_older_page_moves_nothing()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);
        await clinic.LayAsync(s => s.Db.Visits.Single(v => v.Id == _own.Visit.Id).SetNote("Brings the spare"));

        await Assert.ThrowsAsync<OvertakenException>(() =>
            SaveAsync(
                clinic,
                new()
                {
                    Key = Guid.CreateVersion7(),
                    Visit = _own.Visit.Id,
                    Version = _own.Visit.Version,
                    At = OwnScene.FreeAt,
                }
            )
        );

        Assert.Equal(
            OwnScene.BookedAt,
            await clinic.ReadAsync(db => db.Visits.Where(v => v.Id == _own.Visit.Id).Select(v => v.StartsAt).SingleAsync(Cancel))
        );
    }

    [Fact]
    public async Task Less_than_24_hours_before_it_the_client_is_asked_to_ring()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);
        clinic.Clock.Reset(OwnScene.BookedAt - Duration.FromHours(24) + Duration.FromMinutes(1));

        var refusal = await Assert.ThrowsAsync<Refusal>(() =>
            SaveAsync(
                clinic,
                new()
                {
                    Key = Guid.CreateVersion7(),
                    Visit = _own.Visit.Id,
                    Version = _own.Visit.Version,
                    At = OwnScene.FreeAt,
                }
            )
        );

        Assert.Equal([24], refusal.Arguments);
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private Task<SelfBookingOutcome?> SaveAsync(TestClinic clinic, Slice.Input input) =>
        clinic.UseAsync<Slice, SelfBookingOutcome?>(_own.Acting(clinic), slice => slice.SaveAsync(input, Cancel));
}
