using Bunit;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
using HairClinic.Web.Demo.Scenes;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Page = HairClinic.Web.Tests.Features.Visits.ChairPage<HairClinic.Web.Features.Visits.AtTheChairPage>;
using Slice = HairClinic.Web.Features.Visits.AtTheChair;

namespace HairClinic.Web.Tests.Features.Visits.AtTheChair;

public sealed class AtTheChairTests(PgServer server)
{
    private readonly ChairScene _scene = new();
    private Visit _nobodys = null!;

    [Fact]
    public async Task A_stylist_sees_their_own_visits_and_those_nobody_has_yet_with_what_is_on_the_head()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        var screen = await OpenAsync(clinic, _scene.Stylist);

        Assert.Equal([_scene.Visit.Id, _nobodys.Id], screen.Visits.Select(v => v.Id));
        var head = screen.Visits[0].Head!;
        Assert.Equal((_scene.Worn.Serial, "French lace", ChairScene.BondedOn), (head.Serial, head.BaseName, head.AppliedOn));
        var line = Assert.Single(head.Recipe);
        Assert.Equal(("Adhesive A", "A-0", 3), (line.Product, line.Lot, line.Coats!.Value));
        // French lace opens after three weeks; it has been on for more than four.
        Assert.Equal(BondState.WindowOpen, screen.StateOf(head));
        Assert.Null(screen.Visits[1].Head);
        Assert.InRange(clinic.Commands.All.Count, 1, 6);
    }

    [Fact]
    public async Task An_owner_sees_the_whole_salon()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        Assert.Equal(3, (await OpenAsync(clinic, _scene.Owner)).Visits.Count);
    }

    [Fact]
    public async Task Begun_it_is_on_top_and_beginning_it_again_is_refused()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var visit = (await OpenAsync(clinic, _scene.Stylist)).Visits[0];

        await BeginAsync(clinic, visit);

        var screen = await OpenAsync(clinic, _scene.Stylist);
        Assert.Equal(visit.Id, Assert.Single(screen.InChair).Id);
        await Refused.SayingAsync("This visit is {0} already.", () => BeginAsync(clinic, screen.Visits[0]));
    }

    [Fact]
    public async Task Whoever_has_arrived_comes_before_whoever_is_only_booked()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        await clinic.LayAsync(later => later.Db.Visits.Single(v => v.Id == _nobodys.Id).Arrive(_nobodys.Day));

        Assert.Equal([_nobodys.Id, _scene.Visit.Id], (await OpenAsync(clinic, _scene.Stylist)).ToCome.Select(v => v.Id));
    }

    [Fact]
    public async Task Without_a_salon_there_is_nothing_to_show()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        Assert.Null(await clinic.UseAsync<Slice, Slice.Screen?>(clinic.Acting(_scene.Stylist), s => s.OpenAsync(Cancellation)));
    }

    [Fact]
    public async Task One_big_button_begins_and_then_logs()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        await Page.AsAsync(
            clinic,
            _scene.Stylist,
            _scene.Salon,
            async page =>
            {
                await page.Open().ShowsAsync("Ada Fenwick");
                Assert.True(page.Has("Adhesive A · lot A-0 · 3 coats"));

                page.Page.FindAll("button.primary")[0].Click();

                await page.ShowsAsync("Log the rebond");
                Assert.Equal($"/visits/{_scene.Visit.Id}/log-rebond", page.Find("a.primary").GetAttribute("href"));
                Assert.NotEmpty(page.Page.FindAll("time[data-countdown]"));
            }
        );
    }

    private static CancellationToken Cancellation => Xunit.TestContext.Current.CancellationToken;

    private void Lay(Scene laid)
    {
        _scene.Lay(laid);
        var second = laid.AddClient("C-2", "Bo Larch", _scene.Salon);
        laid.Book(second, laid.ServiceWithPurpose(ServicePurpose.WashAndStyle), laid.Chairs[1], _scene.Colleague, laid.Now);
        _nobodys = new Visit(Guid.CreateVersion7(), second.Id, _scene.Salon.Id, laid.ServiceWithPurpose(ServicePurpose.Consultation).Id);
        _nobodys.PutAt(
            [(Domain.Chairs.SegmentKind.HandsOn, 60)],
            laid.Now + Duration.FromHours(3),
            laid.Chairs[1].Id,
            null,
            _scene.Salon,
            [Guid.CreateVersion7()]
        );
        laid.Db.Visits.Add(_nobodys);
    }

    private async Task<Slice.Screen> OpenAsync(TestClinic clinic, Person person) =>
        Assert.IsType<Slice.Screen>(
            await clinic.UseAsync<Slice, Slice.Screen?>(clinic.Acting(person, _scene.Salon), s => s.OpenAsync(Cancellation))
        );

    private Task<Slice.Begun> BeginAsync(TestClinic clinic, Slice.ChairVisit visit) =>
        clinic.UseAsync<Slice, Slice.Begun>(
            clinic.Acting(_scene.Stylist, _scene.Salon),
            s => s.BeginAsync(Guid.CreateVersion7(), new(visit.Id, visit.Version), Cancellation)
        );
}
