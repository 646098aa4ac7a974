using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Features.Visits;
using NodaTime;
using Slice = HairClinic.Web.Features.Visits.Day;

namespace HairClinic.Web.Tests.Features.Visits.Day;

public sealed class DayTests(PgServer server)
{
    private static readonly LocalDate Thursday = VisitScene.Thursday;
    private readonly VisitScene _scene = new();

    [Fact]
    public async Task A_day_of_any_size_is_read_in_four_round_trips()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                _scene.Lay(s);
                for (var hour = 9; hour < 17; hour++)
                    _scene.Book(s, _scene.Coats, hour % 2, hour % 2 == 0 ? _scene.Mara : _scene.Ivo, _scene.At(Thursday, hour));
            }
        );

        var screen = await OpenAsync(clinic, Thursday);

        Assert.Equal(8, screen.Visits.Count);
        Assert.InRange(clinic.Commands.All.Count, 1, 5);
    }

    [Fact]
    public async Task Without_a_date_it_is_the_salons_own_today()
    {
        var newYork = new VisitScene("America/New_York");
        // Half past four in the morning in London is still the evening before in New York.
        await using var clinic = await TestClinic.OpenAsync(server, newYork.Lay, Instant.FromUtc(2027, 2, 3, 4, 30));

        var screen = (
            await clinic.UseAsync<Slice, Slice.Screen?>(
                newYork.AtDesk(clinic),
                s => s.OpenAsync(null, TestContext.Current.CancellationToken)
            )
        )!;

        Assert.Equal(new LocalDate(2027, 2, 2), screen.Date);
        Assert.Equal(screen.Date, screen.Today);
    }

    [Fact]
    public async Task A_late_visit_belongs_to_the_day_on_the_salons_clock()
    {
        var newYork = new VisitScene("America/New_York");
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                newYork.Lay(s);
                // Eight in the evening on Thursday there is one in the morning on Friday in London.
                newYork.Book(s, newYork.Wash, 0, newYork.Mara, newYork.At(Thursday, 20));
            }
        );

        Assert.Single((await OpenAsync(clinic, Thursday, newYork)).Visits);
        Assert.Empty((await OpenAsync(clinic, Thursday.PlusDays(1), newYork)).Visits);
    }

    [Fact]
    public async Task A_closed_day_says_why_and_a_closed_weekday_has_no_reason()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                _scene.Lay(s);
                _scene.Salon.AddClosure(Guid.CreateVersion7(), Thursday, Thursday, "stocktaking");
            }
        );

        var (closed, monday) = (await OpenAsync(clinic, Thursday), await OpenAsync(clinic, new LocalDate(2027, 2, 8)));

        Assert.Equal((0, "stocktaking"), (closed.Open.Count, closed.ClosedBecause));
        Assert.Equal((0, null), (monday.Open.Count, monday.ClosedBecause));
    }

    [Fact]
    public async Task Who_is_away_is_named_and_visits_called_off_hold_no_chair()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        var screen = await OpenAsync(clinic, Thursday);

        Assert.Equal(["Ivo"], screen.Away);
        Assert.Equal([false, true], screen.Visits.OrderBy(v => v.StartsAt).Select(v => v.HoldsChair));

        void Lay(Scene s)
        {
            _scene.Lay(s);
            _scene.Ivo.AddAbsence(Guid.CreateVersion7(), Thursday, Thursday, "course");
            _scene.Book(s, _scene.Wash, 0, _scene.Mara, _scene.At(Thursday, 9)).Cancel();
            _scene.Book(s, _scene.Wash, 0, _scene.Mara, _scene.At(Thursday, 10));
        }
    }

    [Fact]
    public async Task A_visit_of_an_old_book_has_no_chair_and_is_listed_all_the_same()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        var visit = Assert.Single((await OpenAsync(clinic, Thursday)).Visits);

        Assert.Equal((null, null, false), (visit.ChairId, visit.Chair, visit.HoldsChair));

        void Lay(Scene s)
        {
            _scene.Lay(s);
            var old = new Visit(Guid.CreateVersion7(), _scene.Ada.Id, _scene.Salon.Id, _scene.Wash.Id);
            old.PutAt(
                _scene.Wash,
                _scene.At(Thursday, 9),
                null,
                null,
                _scene.Salon,
                [.. _scene.Wash.Steps.Select(_ => Guid.CreateVersion7())]
            );
            s.Db.Visits.Add(old);
        }
    }

    [Fact]
    public async Task Whoever_works_in_no_salon_sees_no_day()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);

        Assert.Null(
            await clinic.UseAsync<Slice, Slice.Screen?>(
                clinic.Acting(_scene.Desk),
                s => s.OpenAsync(null, TestContext.Current.CancellationToken)
            )
        );
    }

    [Fact]
    public async Task Desk_and_stylist_see_the_same_day_and_may_do_different_things_with_it()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);

        var desk = await OpenAsync(clinic, Thursday);
        var stylist = (
            await clinic.UseAsync<Slice, Slice.Screen?>(
                clinic.Acting(_scene.Mara, _scene.Salon),
                s => s.OpenAsync(Thursday, TestContext.Current.CancellationToken)
            )
        )!;

        Assert.Equal((true, false), (desk.MayBook, desk.MayLog));
        Assert.Equal((false, true), (stylist.MayBook, stylist.MayLog));
    }

    [Fact]
    public async Task A_trainee_sees_others_visits_as_taken_time_without_a_name()
    {
        Person tess = null!;
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                _scene.Lay(s);
                tess = s.Hire("Tess Wray", StaffRole.Trainee, _scene.Salon);
                s.Book(_scene.Ada, _scene.Rebond, _scene.Chairs[0], tess, At(9));
                s.Book(_scene.Bo, _scene.Rebond, _scene.Chairs[1], _scene.Mara, At(11));
            }
        );

        var day = (
            await clinic.UseAsync<Slice, Slice.Screen?>(
                clinic.Acting(tess, _scene.Salon),
                s => s.OpenAsync(Thursday, TestContext.Current.CancellationToken)
            )
        )!;

        Assert.Equal(["Ada Fenwick"], day.Visits.Select(v => v.Client));
        var taken = Assert.Single(day.Taken);
        Assert.Equal((_scene.Chairs[1].Id, At(11)), (taken.ChairId, taken.StartsAt));
        Assert.Empty((await OpenAsync(clinic, Thursday)).Taken);
    }

    private static Instant At(int hour) => Instant.FromUtc(2027, 2, 4, hour, 0);

    private Task<Slice.Screen> OpenAsync(TestClinic clinic, LocalDate date, VisitScene? of = null) =>
        clinic.UseAsync<Slice, Slice.Screen>(
            (of ?? _scene).AtDesk(clinic),
            async slice => (await slice.OpenAsync(date, TestContext.Current.CancellationToken))!
        );
}
