using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Fence;
using Slice = HairClinic.Web.Features.Visits.VisitDetails;

namespace HairClinic.Web.Tests.Features.Visits.VisitDetails;

public sealed class VisitDetailsTests(PgServer server)
{
    private readonly VisitScene _scene = new();
    private Visit _visit = null!;

    [Fact]
    public async Task A_visit_says_what_when_who_and_in_which_steps()
    {
        await using var clinic = await OpenAsync();

        var screen = await OpenAsync(clinic, _scene.AtDesk(clinic));

        Assert.Equal(("Ada Fenwick", "Two coats", "Chair 1", "Mara"), (screen!.Client, screen.Service, screen.Chair, screen.Person));
        Assert.Equal(3, screen.Steps.Count);
        Assert.Equal((true, false), (screen.MayBook, screen.MayLog));
        Assert.Single(clinic.Commands.All);
    }

    [Fact]
    public async Task A_stylist_may_log_but_not_move_it_and_not_before_its_day()
    {
        await using var clinic = await OpenAsync();

        var before = await OpenAsync(clinic, clinic.Acting(_scene.Mara, _scene.Salon));
        clinic.Clock.Reset(_scene.At(VisitScene.Thursday, 7));
        var screen = await OpenAsync(clinic, clinic.Acting(_scene.Mara, _scene.Salon));

        Assert.Equal((false, true, true), (screen!.MayBook, screen.MayLog, screen.CanBeLogged));
        Assert.Equal((false, false), (before!.CanBeLogged, before.DayHasCome));
    }

    [Fact]
    public async Task A_visit_of_a_salon_one_does_not_work_in_is_not_there()
    {
        await using var clinic = await OpenAsync();

        Assert.Null(await OpenAsync(clinic, clinic.Acting(_scene.Desk)));
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

    private Task<Slice.Screen?> OpenAsync(TestClinic clinic, PersonActor actor) =>
        clinic.UseAsync<Slice, Slice.Screen?>(actor, slice => slice.OpenAsync(_visit.Id, TestContext.Current.CancellationToken));
}
