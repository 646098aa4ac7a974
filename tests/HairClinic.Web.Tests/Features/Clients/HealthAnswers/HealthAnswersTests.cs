using System.Text;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Sealing;
using HairClinic.Web.Features.Clients;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Slice = HairClinic.Web.Features.Clients.HealthAnswers;

namespace HairClinic.Web.Tests.Features.Clients.HealthAnswers;

public sealed class HealthAnswersTests(PgServer server)
{
    private const string Told = "zinc lozenges since the wedding";

    private readonly ClientScene _given = new();
    private Client _client = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_was_answered_is_there_again_and_each_opening_and_saving_is_noted()
    {
        await using var clinic = await OpenClinicAsync();
        await SaveAsync(clinic, new() { Medicines = Told, ScalpToday = [ScalpSign.Irritated] });

        var screen = await OpenAsync(clinic, _given.Stylist);

        Assert.Equal(Told, screen!.Latest!.Medicines);
        Assert.Equal([ScalpSign.Irritated], screen.Latest.ScalpToday);
        Assert.Equal((_given.Today, "Tam Rowe"), (screen.Saves[0].On, screen.Saves[0].By));
        Assert.Equal([AccessAction.SavedHealth, AccessAction.OpenedHealth], await DeedsAsync(clinic));
    }

    [Fact]
    public async Task Earlier_answers_stay_and_nothing_of_any_is_readable_in_the_book()
    {
        await using var clinic = await OpenClinicAsync();
        await SaveAsync(clinic, new() { Medicines = Told });
        await SaveAsync(clinic, new() { Medicines = Told, Note = "asked again" });
        await KeepDraftAsync(clinic, new() { Medicines = Told });

        Assert.Equal(2, (await OpenAsync(clinic, _given.Stylist))!.Saves.Count);
        var kept = await clinic.ReadAsync(async db =>
            (await db.HealthAnswers.Select(a => a.Closed).ToListAsync(Cancel))
                .Concat(await db.SealedDrafts.Select(d => d.Closed).ToListAsync(Cancel))
                .Append(Encoding.UTF8.GetBytes(string.Join(' ', await db.WriteKeys.Select(k => k.Answer).ToListAsync(Cancel))))
                .Append(Encoding.UTF8.GetBytes(string.Join(' ', await db.AccessNotes.Select(n => n.Reason ?? "").ToListAsync(Cancel))))
                .ToList()
        );
        Assert.All(kept, bytes => Assert.DoesNotContain("zinc", Encoding.UTF8.GetString(bytes), StringComparison.Ordinal));
        Assert.Empty(await clinic.ReadAsync(db => db.Drafts.ToListAsync(Cancel)));
    }

    [Fact]
    public async Task A_draft_is_ones_own_comes_back_and_goes_with_the_save()
    {
        await using var clinic = await OpenClinicAsync();
        await KeepDraftAsync(clinic, new() { Medicines = "first" });
        await KeepDraftAsync(clinic, new() { Medicines = Told });

        Assert.Equal(Told, (await OpenAsync(clinic, _given.Stylist))!.Draft!.History.Medicines);
        await SaveAsync(clinic, new() { Medicines = Told });
        Assert.Null((await OpenAsync(clinic, _given.Stylist))!.Draft);
    }

    [Theory]
    [InlineData(StaffRole.Owner, true)]
    [InlineData(StaffRole.Manager, true)]
    [InlineData(StaffRole.Stylist, true)]
    [InlineData(StaffRole.FrontDesk, false)]
    [InlineData(StaffRole.Trainee, false)]
    public async Task Only_who_must_hear_it_can_open_or_save_it(StaffRole role, bool may)
    {
        await using var clinic = await OpenClinicAsync();
        var person = clinic.Acting(_given.Of(role), _given.Here);

        var screen = await clinic.UseAsync<Slice, Slice.Screen?>(person, s => s.OpenAsync(_client.Id, Cancel));

        Assert.Equal(may, screen is not null);
        Assert.Equal(may, await clinic.UseAsync<Slice, bool>(person, s => s.MayOpenAsync(_client.Id, Cancel)));
        Assert.Equal(may ? 1 : 0, (await DeedsAsync(clinic)).Count);
        if (!may)
            await Refused.SayingAsync("Health answers are for the owner, managers and stylists.", () => SaveAsync(clinic, new(), person));
    }

    [Fact]
    public async Task A_client_of_another_salon_is_not_found_and_nothing_is_noted()
    {
        await using var clinic = await OpenClinicAsync();
        var elsewhere = clinic.Acting(_given.StylistThere, _given.There);

        Assert.Null(await clinic.UseAsync<Slice, Slice.Screen?>(elsewhere, s => s.OpenAsync(_client.Id, Cancel)));
        await Refused.SayingAsync(
            "This client is not there any more. They may have been merged with another record.",
            () => SaveAsync(clinic, new(), elsewhere)
        );
        Assert.Empty(await DeedsAsync(clinic));
    }

    [Fact]
    public async Task Each_save_replaces_what_others_must_know()
    {
        await using var clinic = await OpenClinicAsync();
        await SaveAsync(
            clinic,
            new() { ScalpToday = [ScalpSign.Sunburnt], Reactions = [new() { ProductId = _given.Adhesive.Id, What = "Rash" }] }
        );
        var before = await ClearancesAsync(clinic);

        await SaveAsync(clinic, new() { Reactions = [new() { ProductId = _given.Adhesive.Id, What = "Rash" }] });

        Assert.Equal(4, before.Count);
        Assert.Equal(_given.Adhesive.Id, Assert.Single(await ClearancesAsync(clinic)).ProductId);
    }

    [Fact]
    public async Task A_second_tap_saves_once_and_the_same_key_with_other_answers_is_refused()
    {
        await using var clinic = await OpenClinicAsync();
        var key = Guid.CreateVersion7();
        await SaveAsync(clinic, new() { Medicines = Told }, key: key);
        await SaveAsync(clinic, new() { Medicines = Told }, key: key);

        await Refused.SayingAsync(
            "This form was sent already with other answers. Open it again to change what was saved.",
            () => SaveAsync(clinic, new() { Medicines = "other" }, key: key)
        );

        Assert.Single(await DeedsAsync(clinic));
        Assert.Equal(1, await clinic.ReadAsync(db => db.HealthAnswers.CountAsync(Cancel)));
    }

    [Fact]
    public async Task Once_the_clients_key_is_destroyed_nothing_opens_and_nothing_is_added()
    {
        await using var clinic = await OpenClinicAsync();
        await SaveAsync(clinic, new() { Medicines = Told });
        await clinic.AsAsync(
            clinic.Job,
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                return await services.GetRequiredService<Sealer>().DestroyKeyAsync(db, _client.Id, Cancel);
            }
        );

        var screen = await OpenAsync(clinic, _given.Stylist);

        Assert.True(screen!.Erased);
        Assert.Null(screen.Latest);
        await Refused.SayingAsync("What this client confided was erased. Nothing can be added to it.", () => SaveAsync(clinic, new()));
    }

    [Fact]
    public void A_reaction_says_to_what_and_the_care_team_is_asked_only_under_treatment()
    {
        var errors = new HealthAnswersRules()
            .Validate(
                new Slice.Input
                {
                    History = new() { CareTeamAgreed = true, Reactions = [new()] },
                }
            )
            .Errors.Select(e => e.PropertyName);

        Assert.Equal(["CareTeamAgreed", "Reactions"], errors.Order(StringComparer.Ordinal));
    }

    private Task<TestClinic> OpenClinicAsync() =>
        TestClinic.OpenAsync(server, _given.Laying(g => _client = g.Scene.AddClient("C-1", "Ada Fenwick", g.Here)));

    private Task<Slice.Screen?> OpenAsync(TestClinic clinic, Person person) =>
        clinic.UseAsync<Slice, Slice.Screen?>(clinic.Acting(person, _given.Here), s => s.OpenAsync(_client.Id, Cancel));

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, HealthHistory history, PersonActor? by = null, Guid? key = null) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            by ?? clinic.Acting(_given.Stylist, _given.Here),
            s => s.SaveAsync(key ?? Guid.CreateVersion7(), new() { ClientId = _client.Id, History = history }, Cancel)
        );

    private Task<bool> KeepDraftAsync(TestClinic clinic, HealthHistory history) =>
        clinic.UseAsync<Slice, bool>(
            clinic.Acting(_given.Stylist, _given.Here),
            async s =>
            {
                await s.KeepDraftAsync(new() { ClientId = _client.Id, History = history }, Cancel);
                return true;
            }
        );

    private static Task<List<AccessAction>> DeedsAsync(TestClinic clinic) =>
        clinic.ReadAsync(db => db.AccessNotes.OrderBy(n => n.Number).Select(n => n.Action).ToListAsync(Cancel));

    private Task<List<Clearance>> ClearancesAsync(TestClinic clinic) =>
        clinic.ReadAsync(db => ClearanceStore.LoadAsync(db, _client.Id, _given.Today, Cancel));
}
