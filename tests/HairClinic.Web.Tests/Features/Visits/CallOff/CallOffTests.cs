using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Features.Visits;
using Slice = HairClinic.Web.Features.Visits.CallOff;

namespace HairClinic.Web.Tests.Features.Visits.CallOff;

public sealed class CallOffTests(PgServer server)
{
    private readonly VisitScene _scene = new();
    private Visit _visit = null!;

    [Fact]
    public async Task A_visit_called_off_frees_its_chair_and_hands_and_says_by_whom_and_why()
    {
        await using var clinic = await OpenAsync();

        await SaveAsync(clinic, await InputAsync(clinic, CalledOffBy.Salon, "Water is off"));

        var off = await VisitScene.ReadAsync(clinic, _visit.Id);
        Assert.Equal((VisitState.Cancelled, false), (off.State, off.HoldsChair));
        Assert.All(off.Segments, s => Assert.False(s.HoldsHands));
        Assert.Equal("Called off by the salon. Water is off", off.Note);
        await clinic.LayAsync(s => _scene.Book(s, _scene.Coats, 0, _scene.Mara, _visit.StartsAt));
    }

    [Fact]
    public async Task The_second_to_call_it_off_is_told()
    {
        await using var clinic = await OpenAsync();
        var (first, second) = (await InputAsync(clinic, CalledOffBy.Client), await InputAsync(clinic, CalledOffBy.Salon, "Water is off"));
        await SaveAsync(clinic, first);

        await Refused.SayingAsync("This visit is {0} already.", () => SaveAsync(clinic, second));

        Assert.Equal("Called off by the client.", (await VisitScene.ReadAsync(clinic, _visit.Id)).Note);
    }

    [Fact]
    public async Task Whoever_saw_an_older_visit_calls_nothing_off()
    {
        await using var clinic = await OpenAsync();
        var stale = await InputAsync(clinic, CalledOffBy.Client);
        await clinic.ReadAsync(async db =>
        {
            (await db.Visits.FindAsync([clinic.PracticeId, _visit.Id], TestContext.Current.CancellationToken))!.SetNote("Brings a friend");
            return await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        });

        await Assert.ThrowsAsync<OvertakenException>(() => SaveAsync(clinic, stale));

        Assert.True((await VisitScene.ReadAsync(clinic, _visit.Id)).HoldsChair);
    }

    [Fact]
    public async Task Calling_off_takes_two_round_trips()
    {
        await using var clinic = await OpenAsync();
        var input = await InputAsync(clinic, CalledOffBy.Client);
        clinic.Commands.Clear();

        await SaveAsync(clinic, input);

        Assert.Equal(2, clinic.Commands.All.Count);
    }

    [Fact]
    public void The_salon_says_why_and_somebody_says_who()
    {
        var rules = new CallOffRules();

        Assert.Equal(["Say who calls it off."], rules.Validate(new Slice.Input()).Errors.Select(e => e.ErrorMessage));
        Assert.Equal(
            ["Write why: the client will ask."],
            rules.Validate(new Slice.Input { By = CalledOffBy.Salon }).Errors.Select(e => e.ErrorMessage)
        );
        Assert.True(rules.Validate(new Slice.Input { By = CalledOffBy.Client }).IsValid);
    }

    private Task<TestClinic> OpenAsync() =>
        TestClinic.OpenAsync(
            server,
            s =>
            {
                _scene.Lay(s);
                _visit = _scene.Book(s, _scene.Coats, 0, _scene.Mara, _scene.At(VisitScene.Thursday, 9));
            }
        );

    private async Task<Slice.Input> InputAsync(TestClinic clinic, CalledOffBy by, string? reason = null)
    {
        var screen = await clinic.UseAsync<Slice, Slice.Screen?>(
            _scene.AtDesk(clinic),
            slice => slice.OpenAsync(_visit.Id, TestContext.Current.CancellationToken)
        );
        return new Slice.Input
        {
            VisitId = _visit.Id,
            Version = screen!.Version,
            By = by,
            Reason = reason,
        };
    }

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            _scene.AtDesk(clinic),
            slice => slice.SaveAsync(Guid.CreateVersion7(), input, TestContext.Current.CancellationToken)
        );
}
