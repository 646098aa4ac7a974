using HairClinic.Domain.Chairs;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Demo.Scenes;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using NodaTime;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>A busy Wednesday with three chairs: the desk looks, fills a gap, loses a race, and marks who has come.</summary>
public sealed class BookingDayTests(ChromiumBrowser chromium)
{
    private const string Password = "a long enough phrase";

    // Twenty past ten in London.
    private static readonly Instant Now = Instant.FromUtc(2027, 2, 3, 10, 20);
    private static readonly LocalDate Today = new(2027, 2, 3);
    private Salon _salon = null!;
    private Guid _client;
    private Guid _visit;

    [Fact]
    public async Task Day_and_booking_are_readable_and_clean_for_axe_on_every_device()
    {
        await using var site = await OpenAsync();
        string[] paths =
        [
            "/day",
            "/day?date=2027-02-08",
            "/day?date=2027-02-04",
            $"/visits/book-visit?client={_client}",
            "/visits/book-visit",
            $"/visits/{_visit}/visit-details",
            $"/visits/{_visit}/move-visit",
            $"/visits/{_visit}/call-off",
        ];
        foreach (var screen in new[] { Pages.Desk, Pages.Tablet, Pages.Phone })
        {
            var page = await SignInAsync(site, screen);
            foreach (var (path, index) in paths.Select((p, i) => (p, i)))
            {
                await page.OpenAsync(path);
                await page.PictureAsync($"{screen.Width}-{index}-{path.Split('/', '?')[^1].Split('=')[0]}");
                await page.NothingForAxeAsync();
                Assert.True(
                    await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= innerWidth"),
                    $"{path} is wider than {screen.Width}"
                );
            }
            await page.Context.CloseAsync();
        }
    }

    [Fact]
    public async Task The_desk_taps_a_gap_finds_the_client_and_books_with_one_more_tap()
    {
        await using var site = await OpenAsync();
        var page = await SignInAsync(site, Pages.Desk);

        await page.OpenAsync("/day?date=2027-02-04");
        await page.Locator("a.free").First.ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Book a visit" }).WaitForAsync();
        await page.ReadyAsync();
        await page.GetByRole(AriaRole.Combobox, new() { Name = "Client" }).PressSequentiallyAsync("orl");
        await page.Locator("[role=listbox] [role=option]").First.ClickAsync();
        await page.GetByText("nothing bonded").Or(page.GetByText("window")).First.WaitForAsync();
        await page.PictureAsync("flow-1-chosen");
        await page.Locator("button.slot").First.ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Booked." }).WaitForAsync();
        await page.PictureAsync("flow-2-booked");
        await page.NothingForAxeAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "See that day" }).ClickAsync();
        await page.Locator(".block", new() { HasText = "Orla Finch" }).WaitForAsync();
    }

    [Fact]
    public async Task Of_two_desks_in_the_same_gap_the_slower_is_offered_the_nearest_times_and_loses_nothing_typed()
    {
        await using var site = await OpenAsync();
        var (one, two) = (await SignInAsync(site, Pages.Desk), await SignInAsync(site, Pages.Desk));
        await one.OpenAsync($"/visits/book-visit?client={_client}");
        await two.OpenAsync($"/visits/book-visit?client={_client}");
        await two.GetByLabel("Note for the visit").FillAsync("Brings the spare");

        await one.Locator("button.slot").First.ClickAsync();
        await one.GetByRole(AriaRole.Heading, new() { Name = "Booked." }).WaitForAsync();
        await two.Locator("button.slot").First.ClickAsync();
        await two.GetByText("Nothing was booked, and what you typed is still here.").WaitForAsync();
        await two.PictureAsync("flow-3-taken");
        await two.NothingForAxeAsync();
        Assert.Equal("Brings the spare", await two.GetByLabel("Note for the visit").InputValueAsync());
        await two.Locator("[role=alert] button.slot").First.ClickAsync();
        await two.GetByRole(AriaRole.Heading, new() { Name = "Booked." }).WaitForAsync();
    }

    [Fact]
    public async Task A_time_after_closing_is_booked_by_hand_with_a_second_tap()
    {
        await using var site = await OpenAsync();
        var page = await SignInAsync(site, Pages.Phone);
        await page.OpenAsync($"/visits/book-visit?client={_client}");
        await page.GetByText("Another time, by hand").ClickAsync();
        await page.GetByLabel("Day", new() { Exact = true }).FillAsync("2027-02-05");
        await page.GetByLabel("Time", new() { Exact = true }).FillAsync("19:30");
        await page.GetByLabel("Chair", new() { Exact = true }).SelectOptionAsync("Chair 2");
        await page.GetByLabel("Who does it").SelectOptionAsync("Mara");
        await page.GetByRole(AriaRole.Button, new() { Name = "Book this time" }).ClickAsync();
        await page.GetByText("The salon is closed at that time").WaitForAsync();
        await page.PictureAsync("flow-4-doubt");
        await page.NothingForAxeAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Book it all the same" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Booked." }).WaitForAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "See the visit" }).ClickAsync();
        await page.GetByText("Agreed all the same:").WaitForAsync();
    }

    [Fact]
    public async Task A_client_arrives_with_one_tap_and_a_slip_is_taken_back()
    {
        await using var site = await OpenAsync();
        var page = await SignInAsync(site, Pages.Tablet);
        await page.OpenAsync("/day");
        var here = page.Locator("section", new() { Has = page.Locator("#here") });

        await page.GetByRole(AriaRole.Button, new() { Name = "Arrived Wren Ash" }).ClickAsync();
        await here.GetByText("Wren Ash").First.WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Not here yet Wren Ash" }).ClickAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = "Arrived Wren Ash" }).WaitForAsync();
    }

    private async Task<IPage> SignInAsync(Site site, (int, int) screen)
    {
        var page = await chromium.DeviceAsync(site, screen);
        await page.GotoAsync("/sign-in?ReturnUrl=/day");
        await page.GetByLabel("Name or e-mail").FillAsync("desk@practice.example");
        await page.GetByLabel("Password").FillAsync(Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Book a visit" }).WaitForAsync();
        return page;
    }

    private async Task<Site> OpenAsync()
    {
        var site = await Site.OpenAsync(Now);
        var practice = Guid.CreateVersion7();
        await site
            .Services.GetRequiredService<PracticeJobRunner>()
            .RunJobAsync(
                practice,
                "lay",
                async services =>
                {
                    await using var unfenced = services.GetRequiredService<ClinicDbFactory>().OpenWithoutActor();
                    unfenced.Practices.Add(new PracticeRow(practice));
                    await unfenced.SaveChangesAsync();
                    await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                    var scene = new Scene(db, Now);
                    var desk = Lay(scene);
                    await scene.SaveAsync();
                    var user = new AppUser
                    {
                        Id = Guid.CreateVersion7(),
                        UserName = "desk@practice.example",
                        Email = "desk@practice.example",
                        PracticeId = practice,
                        PersonId = desk.Id,
                        AtSalonId = _salon.Id,
                    };
                    return await services.GetRequiredService<UserManager<AppUser>>().CreateAsync(user, Password);
                }
            );
        return site;
    }

    private Person Lay(Scene scene)
    {
        scene.AddPractice("Invented practice");
        _salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 3);
        var coats = new ServiceKind(Guid.CreateVersion7(), "Rebond, two coats", ServicePurpose.Rebond);
        coats.SetSteps([
            (Guid.CreateVersion7(), SegmentKind.HandsOn, 40),
            (Guid.CreateVersion7(), SegmentKind.Wait, 20),
            (Guid.CreateVersion7(), SegmentKind.HandsOn, 30),
        ]);
        scene.Services.Add(coats);
        scene.Db.ServiceKinds.Add(coats);
        var desk = scene.Hire("Desk", StaffRole.FrontDesk, _salon);
        Person[] hands =
        [
            scene.Hire("Mara", StaffRole.Stylist, _salon),
            scene.Hire("Ivo", StaffRole.Stylist, _salon),
            scene.Hire("Saskia", StaffRole.Stylist, _salon),
        ];
        scene.Hire("Bram", StaffRole.Stylist, _salon).AddAbsence(Guid.CreateVersion7(), Today, Today.PlusDays(2), "course");
        var (wash, fix) = (scene.ServiceWithPurpose(ServicePurpose.WashAndStyle), scene.ServiceWithPurpose(ServicePurpose.FixLift));
        string[] names =
        [
            "Ada Fenwick",
            "Bo Larch",
            "Cleo Marsh",
            "Dag Rowan",
            "Effie Stone",
            "Finn Vale",
            "Greta Wold",
            "Hal Thorne",
            "Ines Brook",
            "Wren Ash",
            "Jon Heath",
            "Orla Finch",
        ];
        var clients = names.Select((n, i) => scene.AddClient($"C-{i + 1}", n, _salon, $"+4416329600{i:00}")).ToList();
        Book(0, coats, 0, 9, 0).Finish(Today);
        var second = Book(1, coats, 0, 10, 30);
        Book(2, wash, 1, 9, 15).Finish(Today);
        Book(3, coats, 1, 10, 0).Begin(Today);
        Book(4, fix, 2, 9, 0).MarkDidNotCome(scene.Now);
        Book(5, scene.ServiceWithPurpose(ServicePurpose.Consultation), 2, 9, 30).Begin(Today);
        Book(6, coats, 2, 10, 45);
        second.Arrive(Today);
        Book(7, coats, 0, 13, 0);
        Book(8, wash, 1, 12, 0);
        Book(9, scene.ServiceWithPurpose(ServicePurpose.FirstFitting), 1, 14, 0);
        _visit = Book(10, coats, 2, 15, 30).Id;
        _client = clients[11].Id;
        var kind = scene.AddUnitKind("Everyday", "French lace", "Workshop North");
        scene.AddBond(
            clients[11],
            scene.AddUnit(clients[11], kind, new LocalDate(2027, 1, 4)),
            new LocalDate(2027, 1, 6),
            scene.AddProduct("Adhesive A", ProductKind.Adhesive, "acrylic", "L1")
        );
        return desk;

        Visit Book(int who, ServiceKind service, int chair, int hour, int minute) =>
            scene.Book(
                clients[who],
                service,
                scene.Chairs[chair],
                hands[chair],
                (Today + new LocalTime(hour, minute)).InZoneStrictly(_salon.TimeZone).ToInstant()
            );
    }
}
