using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Features.Visits;
using HairClinic.Web.Tests.Features.Visits;
using Microsoft.EntityFrameworkCore;
using BookVisit = HairClinic.Web.Features.Visits.BookVisit;
using CardSlice = HairClinic.Web.Features.Clients.Card;
using LogRebond = HairClinic.Web.Features.Visits.LogRebond;

namespace HairClinic.Web.Tests.Features.Clients.HealthAnswers;

/// <summary>What others do with a clearance whose reason they may not read.</summary>
public sealed class ClearedVisitsTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_block_on_the_service_is_a_doubt_that_a_stylists_second_tap_books_and_the_visit_says()
    {
        var scene = new VisitScene();
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                scene.Lay(s);
                Lay(s, scene.Ada.Id, productId: null, ServicePurpose.Rebond);
            }
        );
        var input = new BookVisit.Input
        {
            SalonId = scene.Salon.Id,
            ClientId = scene.Ada.Id,
            ServiceKindId = scene.Rebond.Id,
            ChairId = scene.Chairs[0].Id,
            PersonId = scene.Mara.Id,
            StartsAt = scene.At(VisitScene.Thursday, 11),
        };

        var doubted = await BookAsync(input);
        var booked = await BookAsync(input with { DespiteDoubts = true });

        Assert.Equal([Doubt.AskStylistFirst], doubted.Doubts);
        var visit = await VisitScene.ReadAsync(clinic, booked.Booked!.VisitId);
        Assert.Contains("Ask a stylist", visit.Note!, StringComparison.Ordinal);

        Task<BookVisit.Outcome> BookAsync(BookVisit.Input wish) =>
            clinic.UseAsync<BookVisit, BookVisit.Outcome>(
                clinic.Acting(scene.Mara, scene.Salon),
                s => s.SaveAsync(Guid.CreateVersion7(), wish, Cancel)
            );
    }

    [Fact]
    public async Task A_product_that_is_blocked_is_refused_whoever_bonds()
    {
        var scene = new ChairScene();
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                scene.Lay(s);
                Lay(s, scene.Client.Id, scene.Adhesive.Id, purpose: null);
            }
        );
        var screen = await OpenAsync(clinic, scene, StaffRole.Owner);

        var refused = await Assert.ThrowsAsync<Refusal>(() =>
            SaveAsync(clinic, scene, StaffRole.Owner, Answered(screen) with { DespiteBlock = true })
        );

        Assert.Equal([scene.Adhesive.Id], screen.BlockedProducts);
        Assert.Equal("Adhesive A is blocked for this client. Bond with another product.", refused.Message);
    }

    [Fact]
    public async Task A_block_on_bonding_is_set_aside_only_by_a_stylist_who_says_so_and_the_record_keeps_it()
    {
        var scene = new ChairScene();
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                scene.Lay(s);
                Lay(s, scene.Client.Id, productId: null, ServicePurpose.Rebond);
            }
        );
        var screen = await OpenAsync(clinic, scene, StaffRole.Stylist);
        Assert.Equal((true, true), (screen.BondingBlocked, screen.MayOverride));
        var input = Answered(screen);

        await Refused.SayingAsync(
            "This visit is not in the book of your salons.",
            () => SaveAsync(clinic, scene, StaffRole.Trainee, input with { DespiteBlock = true })
        );
        await Refused.SayingAsync(
            "Bonding is blocked for this client. Look at the skin first; then say that you looked, or do not bond.",
            () => SaveAsync(clinic, scene, StaffRole.Stylist, input)
        );
        await SaveAsync(clinic, scene, StaffRole.Stylist, input with { DespiteBlock = true });

        Assert.Contains(
            "set aside",
            await clinic.ReadAsync(db => db.VisitRecords.Select(r => r.Note!).SingleAsync(Cancel)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task The_card_says_what_to_ask_about_and_never_why()
    {
        var scene = new ChairScene();
        await using var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                scene.Lay(s);
                Lay(s, scene.Client.Id, scene.Adhesive.Id, purpose: null);
                Lay(s, scene.Client.Id, productId: null, ServicePurpose.Rebond);
                Lay(s, scene.Client.Id, productId: null, ServicePurpose.FixLift);
            }
        );

        var card = await clinic.UseAsync<CardSlice, CardSlice.Opened>(
            clinic.Acting(scene.Stylist, scene.Salon),
            s => s.OpenAsync(scene.Client.Id, Cancel)
        );

        Assert.Equal(
            [new CardSlice.ClearanceRow(ClearanceSeverity.Block, null), new CardSlice.ClearanceRow(ClearanceSeverity.Block, "Adhesive A")],
            card.Screen!.Clearances.OrderBy(c => c.Product, StringComparer.Ordinal)
        );
    }

    private static void Lay(Scene scene, Guid clientId, Guid? productId, ServicePurpose? purpose) =>
        scene.Db.Clearances.Add(
            new Clearance(
                Guid.CreateVersion7(),
                clientId,
                Guid.CreateVersion7(),
                new ClearanceSpec(productId, purpose, ChairScene.Today, Until: null, ClearanceSeverity.Block)
            )
        );

    private static LogRebond.Input Answered(LogRebond.Screen screen) => screen.Start with { FoundLifted = false, WaitsKept = true };

    private static Web.Fence.PersonActor Acting(TestClinic clinic, ChairScene scene, StaffRole role) =>
        clinic.Acting(
            role switch
            {
                StaffRole.Owner => scene.Owner,
                StaffRole.Trainee => scene.Trainee,
                _ => scene.Stylist,
            },
            scene.Salon
        );

    private static async Task<LogRebond.Screen> OpenAsync(TestClinic clinic, ChairScene scene, StaffRole role) =>
        (await clinic.UseAsync<LogRebond, LogRebond.Screen?>(Acting(clinic, scene, role), s => s.OpenAsync(scene.Visit.Id, Cancel)))!;

    private static Task<LogRebond.Outcome> SaveAsync(TestClinic clinic, ChairScene scene, StaffRole role, LogRebond.Input input) =>
        clinic.UseAsync<LogRebond, LogRebond.Outcome>(Acting(clinic, scene, role), s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
}
