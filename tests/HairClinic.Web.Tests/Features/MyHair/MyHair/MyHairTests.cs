using System.Diagnostics;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Privacy;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
using HairClinic.Web.AccessLog;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Features.MyHair;
using HairClinic.Web.Fence;
using HairClinic.Web.Language;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Slice = HairClinic.Web.Features.MyHair.MyHair;

namespace HairClinic.Web.Tests.Features.MyHair.MyHair;

public sealed class MyHairTests(PgServer server)
{
    private Client _client = null!;
    private Client _other = null!;

    [Fact]
    public async Task A_client_sees_their_own_due_date_with_its_reason_and_their_booking()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        var screen = await OpenAsync(clinic, _client.Id);

        // French lace, 3–5 weeks: one in five such bonds has lifted by day 23.4, so day 23 is the last with four in five holding.
        Assert.Equal(new LocalDate(2027, 2, 12), screen!.Bond!.DueOn);
        Assert.Equal(BondState.Held, screen.State);
        Assert.Contains(screen.Bond.Reasons, r => r.Rule == DueRuleName.HoldWindow);
        Assert.Equal(new LocalDateTime(2027, 2, 12, 10, 0), screen.Visit!.At);
    }

    [Theory]
    [InlineData(VisitState.Cancelled)]
    [InlineData(VisitState.DidNotCome)]
    [InlineData(VisitState.Done)]
    public async Task A_visit_that_will_not_take_place_or_is_over_is_no_booking(VisitState state)
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        await clinic.ReadAsync(db =>
            db.Visits.Where(v => v.ClientId == _client.Id)
                .ExecuteUpdateAsync(set => set.SetProperty(v => v.State, state), TestContext.Current.CancellationToken)
        );

        Assert.Null((await OpenAsync(clinic, _client.Id))!.Visit);
    }

    [Fact]
    public async Task A_bond_made_yesterday_evening_is_still_setting()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        var screen = await OpenAsync(clinic, _other.Id);

        Assert.Equal(BondState.Curing, screen!.State);
        Assert.Equal(TestClinic.UsualNow + Duration.FromHours(8), screen.Bond!.CuredAt);
    }

    [Fact]
    public async Task What_is_kept_about_them_is_led_to_once_there_is_some_of_it()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var mine = (await clinic.SignInAsync(_client.Id)).SignInId;
        var bare = (await OpenAsync(clinic, _client.Id, mine))!;
        Assert.Equal((false, false, false), (bare.HasPhotos, bare.HasConsents, bare.WasSeen));

        await clinic.LayAsync(scene =>
        {
            scene.Db.Photos.AddRange(Photo(_client, shared: true), Photo(_other, shared: false));
            var text = new ConsentText(Guid.CreateVersion7(), ConsentSubject.Photos, "en-GB", 1, "Photos may be kept.", scene.Now, null);
            scene.Db.Add(text);
            scene.Db.Add(
                new Consent(Guid.CreateVersion7(), _client.Id, text.Subject, given: true, text.Id, scene.Now, null, ConsentWay.OnPaper)
            );
        });
        await clinic.AsAsync(
            new ClientActor(clinic.PracticeId, _client.Id),
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                await services.GetRequiredService<AccessLogStore>().NoteAsync(db, AccessAction.OpenedPhotos, _client.Id);
                return true;
            }
        );

        var full = (await OpenAsync(clinic, _client.Id, mine))!;
        Assert.Equal((true, true, true), (full.HasPhotos, full.HasConsents, full.WasSeen));
        var others = (await OpenAsync(clinic, _other.Id))!;
        Assert.Equal((false, false, false), (others.HasPhotos, others.HasConsents, others.WasSeen));

        static Photo Photo(Client of, bool shared)
        {
            var day = new LocalDate(2027, 2, 1);
            var photo = new Photo(
                Guid.CreateVersion7(),
                of.Id,
                PhotoKind.After,
                day,
                day,
                new(Guid.NewGuid(), 1, 1, 1),
                null,
                TestClinic.UsualNow
            );
            photo.SetShared(shared);
            return photo;
        }
    }

    [Fact]
    public async Task The_page_is_read_in_one_round_trip()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var signIn = (await clinic.SignInAsync(_client.Id)).SignInId;
        await OpenAsync(clinic, _client.Id, signIn);
        clinic.Commands.Clear();
        var trips = new List<string>();
        using var ours = new Activity("round trips").Start();
        using var listener = new ActivityListener
        {
            ShouldListenTo = source => source.Name == "Npgsql",
            Sample = (ref _) => ActivitySamplingResult.AllData,
            ActivityStopped = told =>
            {
                // Other tests run meanwhile: only what this one started counts, and a connection more, opened since they hold the rest, does not.
                if (told.TraceId == ours.TraceId && told.GetTagItem("db.query.text") is string statement)
                    trips.Add(statement);
            },
        };
        ActivitySource.AddActivityListener(listener);

        await OpenAsync(clinic, _client.Id, signIn);

        Assert.Equal([OwnPageReader.Call], trips);
        Assert.Empty(clinic.Commands.All);
    }

    [Fact]
    public async Task An_ended_sign_in_and_one_of_somebody_else_show_nothing()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var signIn = (await clinic.SignInAsync(_client.Id)).SignInId;

        Assert.NotNull(await OpenAsync(clinic, _client.Id, signIn));
        Assert.Null(await OpenAsync(clinic, _other.Id, signIn));
        Assert.Null(await OpenAsync(clinic, _client.Id, Guid.NewGuid()));

        await clinic.ReadAsync(async db =>
        {
            (await db.ClientSignIns.SingleAsync(s => s.Id == signIn, TestContext.Current.CancellationToken)).End(TestClinic.UsualNow);
            return await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        });
        Assert.Null(await OpenAsync(clinic, _client.Id, signIn));
    }

    [Fact]
    public async Task The_next_unit_is_told_of_in_kind_words_without_its_maker()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                Lay(scene);
                var next = new HairSystem(Guid.CreateVersion7(), "next", _client.Id, scene.Kinds[0].Id, new LocalDate(2027, 1, 10));
                next.Order(new LocalDate(2027, 1, 11));
                next.AddDeliveryPromise(Guid.CreateVersion7(), new LocalDate(2027, 3, 20), new LocalDate(2027, 1, 12));
                next.AcknowledgeOrder(new LocalDate(2027, 1, 12));
                scene.Db.HairSystems.Add(next);
            }
        );

        var coming = (await OpenAsync(clinic, _client.Id))!.Coming!;

        Assert.Equal("It is being made.", EnumWords.InEnglish(coming.State, "Own"));
        Assert.Equal(new LocalDate(2027, 3, 20), coming.UpcomingPromise(new LocalDate(2027, 2, 3)));
    }

    [Fact]
    public async Task A_client_of_another_practice_sees_nothing_here()
    {
        await using var theirs = await TestClinic.OpenAsync(server, Lay);
        var stranger = await theirs.SignInAsync(_client.Id);
        await using var ours = await TestClinic.OpenAsync(server, Lay);

        Assert.Null(await OpenAsync(ours, stranger.ClientId, stranger.SignInId));
    }

    private void Lay(Scene scene)
    {
        scene.AddPractice("Practice under test");
        var salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
        var stylist = scene.Hire("Stylist", StaffRole.Stylist, salon);
        var adhesive = scene.AddProduct("Adhesive under test", ProductKind.Adhesive, "water-based acrylic", "L1");
        var kind = scene.AddUnitKind("Lace under test", "French lace", "Workshop under test");
        _client = scene.AddClient("C-1", "Ada Fenwick", salon, email: "Ada@example.test");
        scene.AddBond(_client, scene.AddUnit(_client, kind, new LocalDate(2027, 1, 5)), new LocalDate(2027, 1, 20), adhesive);
        scene.Book(_client, scene.ServiceWithPurpose(ServicePurpose.Rebond), scene.Chairs[0], stylist, Instant.FromUtc(2027, 2, 12, 10, 0));
        _other = scene.AddClient("C-2", "Bo Larch", salon, email: "bo@example.test");
        var applied = TestClinic.UsualNow - Duration.FromHours(16);
        scene.AddBond(_other, scene.AddUnit(_other, kind, new LocalDate(2027, 1, 5)), new LocalDate(2027, 2, 2), adhesive, applied);
    }

    private static async Task<Slice.Screen?> OpenAsync(TestClinic clinic, Guid clientId, Guid? signIn = null) =>
        await clinic.UseAsync<Slice, Slice.Screen?>(
            signIn is null ? await clinic.SignInAsync(clientId) : new ClientActor(clinic.PracticeId, clientId, signIn),
            slice => slice.OpenAsync(TestContext.Current.CancellationToken)
        );
}
