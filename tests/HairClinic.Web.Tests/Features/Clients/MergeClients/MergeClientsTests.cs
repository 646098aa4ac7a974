using System.Text.Json;
using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
using HairClinic.Web.Data;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using CardSlice = HairClinic.Web.Features.Clients.Card;
using FindSlice = HairClinic.Web.Features.Clients.Find;
using Slice = HairClinic.Web.Features.Clients.MergeClients;

namespace HairClinic.Web.Tests.Features.Clients.MergeClients;

public sealed class MergeClientsTests(PgServer server)
{
    private readonly ClientScene _given = new();
    private Client _kept = null!;
    private Client _folded = null!;
    private HairSystem _unit = null!;

    [Fact]
    public async Task Everything_of_the_folded_record_moves_to_the_one_that_stays()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LayPair));

        var outcome = await MergeAsync(clinic);

        Assert.Equal(9, outcome.Moved);
        Assert.Equal((1, 1, 1, 1, 1, 1), await OwnedAsync(clinic, _kept.Id));
        Assert.Equal((0, 0, 0, 0, 0, 0), await OwnedAsync(clinic, _folded.Id));
    }

    [Fact]
    public async Task The_folded_record_is_found_by_its_words_and_its_address_leads_to_the_one_kept()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LayPair));
        await MergeAsync(clinic);

        var card = await clinic.UseAsync<CardSlice, CardSlice.Opened>(
            Desk(clinic),
            s => s.OpenAsync(_folded.Id, TestContext.Current.CancellationToken)
        );
        var found = await clinic.UseAsync<FindSlice, FindSlice.Screen>(
            Desk(clinic),
            s => s.OpenAsync("F-1", TestContext.Current.CancellationToken)
        );

        Assert.Equal(new CardSlice.Opened(null, _kept.Id), card);
        Assert.Equal(["K-1"], found.Rows.Select(r => r.Code));
    }

    [Fact]
    public async Task Undo_restores_exactly_and_what_was_added_since_stays_with_the_kept_record()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LayPair));
        var before = await EverythingAsync(clinic);
        await MergeAsync(clinic);
        var added = new LifeEvent(Guid.CreateVersion7(), _kept.Id, LifeEventKind.Other, _given.Today, _given.Today, away: false);
        await clinic.LayAsync(scene => scene.Db.LifeEvents.Add(added));

        await UndoAsync(clinic);

        var after = await EverythingAsync(clinic);
        Assert.True(after.Remove(added.Id, out var owner));
        Assert.Equal(_kept.Id, owner);
        Assert.Equal(before, after);
        Assert.Null(
            await clinic.ReadAsync(db =>
                db.Clients.Where(c => c.Id == _folded.Id).Select(c => c.MergedIntoId).SingleAsync(TestContext.Current.CancellationToken)
            )
        );
    }

    [Fact]
    public async Task Where_something_has_to_be_asked_about_before_bonding_whoever_may_read_why_merges()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LayPair));
        await clinic.LayAsync(g =>
            g.Db.Clearances.Add(
                new(
                    Guid.CreateVersion7(),
                    _folded.Id,
                    Guid.CreateVersion7(),
                    new(null, null, _given.Today, Until: null, ClearanceSeverity.Block)
                )
            )
        );

        var refused = await Assert.ThrowsAsync<Refusal>(() => MergeAsync(clinic));

        Assert.StartsWith("There is something in these records to ask about", refused.Sentence, StringComparison.Ordinal);
        await clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(_given.Of(StaffRole.Manager), _given.Here),
            s => s.SaveAsync(Guid.CreateVersion7(), new(_kept.Id, _folded.Id), TestContext.Current.CancellationToken)
        );
        Assert.Equal(
            _kept.Id,
            await clinic.ReadAsync(db => db.Clearances.Select(c => c.ClientId).SingleAsync(TestContext.Current.CancellationToken))
        );
    }

    [Fact]
    public async Task A_merge_is_undone_once()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LayPair));
        await MergeAsync(clinic);
        await UndoAsync(clinic);

        Assert.Equal("This merge was undone already.", (await Assert.ThrowsAsync<Refusal>(() => UndoAsync(clinic))).Message);
    }

    [Fact]
    public async Task A_unit_that_was_bonded_after_the_merge_keeps_it_from_being_undone()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LayPair));
        await MergeAsync(clinic);
        await clinic.LayAsync(scene =>
        {
            var bond = new Bond(Guid.CreateVersion7(), _unit.Id, _kept.Id, _given.Today, null, Attachment.Liquid, null);
            bond.Remove(_given.Today, RemovalReason.Style);
            bond.SetDueWindow(new DueWindow(_given.Today, _given.Today, _given.Today, _given.Today, default(DueReasons) with { }));
            scene.Db.Bonds.Add(bond);
        });

        var refusal = await Assert.ThrowsAsync<Refusal>(() => UndoAsync(clinic));

        Assert.StartsWith($"Unit {_unit.Serial} was bonded after the merge", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_heads_that_both_wear_a_unit_are_not_merged_and_nothing_moves()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                (_kept, _, _) = g.Wearing("K-1", "Ada Fenwick", 10);
                (_folded, _unit, _) = g.Wearing("F-1", "Ada Fenwik", 5);
            })
        );
        var before = await EverythingAsync(clinic);

        var refusal = await Assert.ThrowsAsync<Refusal>(() => MergeAsync(clinic));

        Assert.StartsWith("Both records have a unit on the head today", refusal.Message, StringComparison.Ordinal);
        Assert.Equal(before, await EverythingAsync(clinic));
    }

    [Fact]
    public async Task Likely_duplicates_are_named_in_ones_own_salons_and_nothing_is_said_of_others()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                _kept = g.Scene.AddClient("K-1", "Ada Fenwick", g.Here, "+441632960001", "ada@example.org");
                g.Scene.AddClient("P-1", "A. Fenwick", g.Here, "+441632960001");
                g.Scene.AddClient("E-1", "Fenwick", g.There, email: "ADA@example.org");
                g.Scene.AddClient("N-1", "Ada Fenwick", g.Here);
                var twin = g.Scene.AddClient("B-1", "Fenwick, Ada", g.Here);
                foreach (var client in new[] { _kept, twin })
                    client.SetBirthDateAndNote(new LocalDate(1980, 2, 29), note: null);
            })
        );

        var screen = await OpenAsync(clinic, null);

        Assert.Equal(["B-1", "P-1"], screen!.Candidates.Select(c => c.Side.Code));
        Assert.Equal(
            (false, false, true),
            (
                screen.Candidates[0].Because!.SamePhone,
                screen.Candidates[0].Because!.SameEmail,
                screen.Candidates[0].Because!.SameNameAndBirth
            )
        );
    }

    [Fact]
    public async Task What_is_shown_to_merge_is_the_same_whoever_another_salon_knows()
    {
        (string? Phone, string? Email)[] there = [("+441632960001", null), (null, "ADA@example.org"), (null, null)];
        List<string> shown = [];
        foreach (var (phone, email) in there)
        {
            await using var clinic = await TestClinic.OpenAsync(
                server,
                _given.Laying(g =>
                {
                    _kept = g.Scene.AddClient("K-1", "Ada Fenwick", g.Here, "+441632960001", "ada@example.org");
                    g.Scene.AddClient("E-1", "Fenwick", g.There, phone, email);
                })
            );
            foreach (var code in new[] { null, "E-1" })
                shown.Add(JsonSerializer.Serialize((await OpenAsync(clinic, code))! with { Here = null!, CodeUnknown = false }));
        }

        Assert.Single(shown.Distinct());
    }

    [Fact]
    public async Task Another_record_can_be_named_by_its_code()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LayPair));

        Assert.Equal("F-1", Assert.Single((await OpenAsync(clinic, " F-1 "))!.Candidates).Side.Code);
        Assert.True((await OpenAsync(clinic, "Z-9"))!.CodeUnknown);
    }

    [Fact]
    public async Task A_record_of_another_salon_cannot_be_merged()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                _kept = g.Scene.AddClient("K-1", "Ada Fenwick", g.Here);
                _folded = g.Scene.AddClient("F-1", "Ada Fenwick", g.There);
            })
        );

        await Refused.SayingAsync("One of the two records is not there any more. Open the client again.", () => MergeAsync(clinic));
    }

    [Fact]
    public async Task Whoever_was_let_in_neither_finds_folds_nor_lets_go()
    {
        Client own = null!;
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                LayPair(g);
                g.LetIn(_kept);
                g.LetIn(_folded, daysAgo: 4);
                own = g.Scene.AddClient("O-1", "Ada Fenwick", g.There, "+441632960001");
            })
        );
        var there = clinic.Acting(_given.DeskThere, _given.There);
        await MergeAsync(clinic);
        var merge = await clinic.ReadAsync(db => db.ClientMerges.Select(m => m.Id).SingleAsync(TestContext.Current.CancellationToken));
        Task<T> Use<T>(Func<Slice, Task<T>> call) => clinic.UseAsync(there, call);

        Assert.Null(await Use(s => s.OpenAsync(_kept.Id, null, TestContext.Current.CancellationToken)));
        Assert.Empty((await Use(s => s.OpenAsync(own.Id, "K-1", TestContext.Current.CancellationToken)))!.Candidates);
        foreach (var pair in new[] { new Slice.Input(own.Id, _kept.Id), new Slice.Input(_kept.Id, own.Id) })
            await Refused.SayingAsync(
                "Records are merged, and a merge is undone, only where both have their home salon. Ask an owner.",
                () => Use(s => s.SaveAsync(Guid.CreateVersion7(), pair, TestContext.Current.CancellationToken))
            );
        await Refused.SayingAsync(
            "This merge is not there any more.",
            () => Use(s => s.UndoAsync(Guid.CreateVersion7(), new(merge), TestContext.Current.CancellationToken))
        );
        await UndoAsync(clinic);
    }

    [Fact]
    public async Task Visits_at_the_same_time_are_both_kept_told_and_parted_again_by_undoing()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LayTwice));

        var outcome = await MergeAsync(clinic);

        var twice = Assert.Single(outcome.Twice);
        Assert.Equal((_own.Id, _came.Id), (twice.Kept.VisitId, twice.Aside.VisitId));
        Assert.Equal((_own.StartsAt, _came.StartsAt, "Elm Row"), (twice.Kept.StartsAt, twice.Aside.StartsAt, twice.Aside.Salon));
        Assert.Equal((true, false), await HoldAsync(clinic));

        await UndoAsync(clinic);

        Assert.Equal((true, true), await HoldAsync(clinic));
    }

    [Fact]
    public async Task Once_the_other_is_called_off_the_one_that_stood_aside_takes_the_client()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LayTwice));
        await MergeAsync(clinic);

        await clinic.LayAsync(scene => scene.Db.Visits.Single(v => v.Id == _own.Id).Cancel());

        Assert.Equal((false, true), await HoldAsync(clinic));
    }

    private Visit _own = null!;
    private Visit _came = null!;

    private void LayTwice(ClientScene g)
    {
        _kept = g.Scene.AddClient("K-1", "Ada Fenwick", g.Here);
        _folded = g.Scene.AddClient("F-1", "Ada Fenwik", g.Here);
        var at = g.Scene.Now + Duration.FromDays(3);
        _own = g.Scene.Book(_kept, g.Scene.ServiceWithPurpose(ServicePurpose.Rebond), g.Chair, g.Stylist, at);
        _came = g.Scene.Book(
            _folded,
            g.Scene.ServiceWithPurpose(ServicePurpose.WashAndStyle),
            g.Scene.Chairs.First(c => c.SalonId == g.Here.Id && c != g.Chair),
            g.StylistThere,
            at + Duration.FromMinutes(30)
        );
    }

    private Task<(bool Own, bool Came)> HoldAsync(TestClinic clinic) =>
        clinic.ReadAsync(async db =>
        {
            var visits = await db
                .Visits.AsNoTracking()
                .ToDictionaryAsync(v => v.Id, v => v.HoldsClient, TestContext.Current.CancellationToken);
            return (visits[_own.Id], visits[_came.Id]);
        });

    private void LayPair(ClientScene g)
    {
        _kept = g.Scene.AddClient("K-1", "Ada Fenwick", g.Here, "+441632960001");
        (_folded, _unit, _) = g.Wearing("F-1", "Ada Fenwik", 10);
        _folded.AddLifeEvent(new LifeEvent(Guid.CreateVersion7(), _folded.Id, LifeEventKind.Travel, g.Today, g.Today, away: true));
        _folded.AddCareFact(new CareFact(Guid.CreateVersion7(), _folded.Id, g.Today, new() { Skin = SkinOiliness.Dry }));
        g.Scene.Book(_folded, g.Scene.ServiceWithPurpose(ServicePurpose.Rebond), g.Chair, g.Stylist, g.Scene.Now + Duration.FromDays(3));
        g.Scene.Db.ContactNotes.Add(
            new ContactNote(Guid.CreateVersion7(), _folded.Id, ContactOutcome.Rang, g.Scene.Now, g.Desk.Id, null, null)
        );
    }

    private static Task<(int, int, int, int, int, int)> OwnedAsync(TestClinic clinic, Guid id) =>
        clinic.ReadAsync(async db =>
        {
            var token = TestContext.Current.CancellationToken;
            return (
                await db.HairSystems.CountAsync(x => x.ClientId == id, token),
                await db.Bonds.CountAsync(x => x.ClientId == id, token),
                await db.Visits.CountAsync(x => x.ClientId == id, token),
                await db.LifeEvents.CountAsync(x => x.ClientId == id, token),
                await db.CareFacts.CountAsync(x => x.ClientId == id, token),
                await db.ContactNotes.CountAsync(x => x.ClientId == id, token)
            );
        });

    // Whose every row is, by its id.
    private static Task<Dictionary<Guid, Guid?>> EverythingAsync(TestClinic clinic) =>
        clinic.ReadAsync(async db =>
        {
            var token = TestContext.Current.CancellationToken;
            var all = new Dictionary<Guid, Guid?>();
            async Task Add(IQueryable<KeyValuePair<Guid, Guid?>> rows) =>
                (await rows.ToListAsync(token)).ForEach(r => all.Add(r.Key, r.Value));
            await Add(db.HairSystems.Select(x => new KeyValuePair<Guid, Guid?>(x.Id, x.ClientId)));
            await Add(db.Bonds.Select(x => new KeyValuePair<Guid, Guid?>(x.Id, x.ClientId)));
            await Add(db.Visits.Select(x => new KeyValuePair<Guid, Guid?>(x.Id, x.ClientId)));
            await Add(db.LifeEvents.Select(x => new KeyValuePair<Guid, Guid?>(x.Id, x.ClientId)));
            await Add(db.CareFacts.Select(x => new KeyValuePair<Guid, Guid?>(x.Id, x.ClientId)));
            await Add(db.ContactNotes.Select(x => new KeyValuePair<Guid, Guid?>(x.Id, x.ClientId)));
            await Add(db.FindWords.Select(x => new KeyValuePair<Guid, Guid?>(x.Id, x.SubjectId)));
            return all;
        });

    private HairClinic.Web.Fence.PersonActor Desk(TestClinic clinic) => clinic.Acting(_given.Desk, _given.Here);

    private Task<Slice.Screen?> OpenAsync(TestClinic clinic, string? code) =>
        clinic.UseAsync<Slice, Slice.Screen?>(Desk(clinic), s => s.OpenAsync(_kept.Id, code, TestContext.Current.CancellationToken));

    private Task<Slice.Outcome> MergeAsync(TestClinic clinic) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            Desk(clinic),
            s => s.SaveAsync(Guid.CreateVersion7(), new(_kept.Id, _folded.Id), TestContext.Current.CancellationToken)
        );

    private async Task UndoAsync(TestClinic clinic)
    {
        var merge = await clinic.ReadAsync(db => db.ClientMerges.Select(m => m.Id).SingleAsync(TestContext.Current.CancellationToken));
        await clinic.UseAsync<Slice, Slice.Outcome>(
            Desk(clinic),
            s => s.UndoAsync(Guid.CreateVersion7(), new(merge), TestContext.Current.CancellationToken)
        );
    }
}
