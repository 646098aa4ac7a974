using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.MyHair.CallOffMyTime;

namespace HairClinic.Web.Tests.Features.MyHair.CallOffMyTime;

public sealed class CallOffMyTimeTests(PgServer server)
{
    private readonly OwnScene _own = new();

    [Fact]
    public async Task A_client_calls_off_their_own_visit_and_a_second_tap_gets_the_same_answer()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);
        var input = new Slice.Input
        {
            Key = Guid.CreateVersion7(),
            Visit = _own.Visit.Id,
            Version = _own.Visit.Version,
        };

        var first = await SaveAsync(clinic, input);

        Assert.Equal(new LocalDateTime(2027, 2, 12, 10, 0), first!.Was);
        Assert.Equal(first, await SaveAsync(clinic, input));
        Assert.Equal(VisitState.Cancelled, await StateAsync(clinic, _own.Visit.Id));
    }

    [Fact]
    public async Task Somebody_elses_visit_is_not_found()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);

        Assert.Null(await SaveAsync(clinic, new() { Key = Guid.CreateVersion7(), Visit = _own.OthersVisit.Id }));
        Assert.Equal(VisitState.Booked, await StateAsync(clinic, _own.OthersVisit.Id));
    }

    [Fact]
    public async Task Too_late_it_is_for_the_phone()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);
        clinic.Clock.Reset(OwnScene.BookedAt - Duration.FromHours(2));

        await Refused.SayingAsync(
            "It is less than {0} hours away: to change it, please ring us.",
            () =>
                SaveAsync(
                    clinic,
                    new()
                    {
                        Key = Guid.CreateVersion7(),
                        Visit = _own.Visit.Id,
                        Version = _own.Visit.Version,
                    }
                )
        );
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static Task<VisitState> StateAsync(TestClinic clinic, Guid visit) =>
        clinic.ReadAsync(db => db.Visits.Where(v => v.Id == visit).Select(v => v.State).SingleAsync(Cancel));

    private Task<Slice.Outcome?> SaveAsync(TestClinic clinic, Slice.Input input) =>
        clinic.UseAsync<Slice, Slice.Outcome?>(_own.Acting(clinic), slice => slice.SaveAsync(input, Cancel));
}
