using HairClinic.Domain.Practices;
using HairClinic.Domain.Privacy;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Fence;
using HairClinic.Web.Workers;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Privacy.EditRetention;

namespace HairClinic.Web.Tests.Features.Privacy.EditRetention;

public sealed class EditRetentionTests(PgServer server)
{
    private readonly PrivacyScene _scene = new();

    private static CancellationToken Cancel => PrivacyScene.Cancel;

    [Fact]
    public async Task The_preview_counts_and_changes_nothing()
    {
        await using var clinic = await _scene.OpenAsync(server);
        clinic.Clock.AdvanceDays(61);

        var drafts = (await OpenAsync(clinic)).Rules.Single(r => r.Subject == RetentionSubject.Drafts);

        Assert.Equal((1, _scene.Given.Today, true), (drafts.Over.Rows, drafts.Over.Oldest!.Value, drafts.Usual));
        Assert.Equal(1, await clinic.ReadAsync(db => db.Drafts.CountAsync(Cancel)));
    }

    [Fact]
    public async Task At_night_only_what_goes_by_itself_goes_and_once()
    {
        await using var clinic = await _scene.OpenAsync(server);
        clinic.Clock.Reset(Instant.FromUtc(2030, 2, 3, 3, 0));

        var gone = await clinic.UseAsync<RetentionLoop, int>(clinic.Job, k => k.ApplyToPracticeAsync(clinic.PracticeId, Cancel));
        var again = await clinic.UseAsync<RetentionLoop, int>(clinic.Job, k => k.ApplyToPracticeAsync(clinic.PracticeId, Cancel));

        // A draft, a link and a kept answer; undone work stays (the scene's own asks for a plan), and so does what somebody has to confirm.
        Assert.Equal((3, 0), (gone, again));
        Assert.Equal(1, await clinic.ReadAsync(db => db.ContactNotes.CountAsync(Cancel)));
        Assert.Equal(3, await clinic.ReadAsync(db => db.WorkItems.CountAsync(Cancel)));
    }

    [Fact]
    public async Task By_day_nothing_goes_by_itself()
    {
        await using var clinic = await _scene.OpenAsync(server);
        clinic.Clock.Reset(Instant.FromUtc(2030, 2, 3, 12, 0));

        Assert.Equal(0, await clinic.UseAsync<RetentionLoop, int>(clinic.Job, k => k.ApplyToPracticeAsync(clinic.PracticeId, Cancel)));
    }

    [Fact]
    public async Task A_key_kept_for_less_than_two_days_is_refused()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var owner = await clinic.SignInAsync(_scene.AsOwner(clinic));

        var refusal = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, owner, RetentionSubject.WriteKeys, 1));

        Assert.DoesNotContain("prove anew", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_owner_changes_a_rule_after_proving_anew_who_they_are_and_a_manager_never()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var owner = await clinic.SignInAsync(_scene.AsOwner(clinic));
        var manager = await clinic.SignInAsync(clinic.Acting(_scene.Given.Of(StaffRole.Manager), _scene.Given.Here));

        await SaveAsync(clinic, owner, RetentionSubject.ContactNotes, 400);
        await Refused.SayingAsync(
            "Only an owner changes how long things are kept.",
            () => SaveAsync(clinic, manager, RetentionSubject.ContactNotes, 30)
        );
        clinic.Clock.Advance(SessionStore.Fresh);
        var late = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, owner, RetentionSubject.ContactNotes, 30));

        Assert.Contains("prove anew", late.Message, StringComparison.Ordinal);
        Assert.Equal((true, 400), await SeenAsync(owner));
        Assert.Equal((false, 400), await SeenAsync(manager));

        async Task<(bool, int)> SeenAsync(PersonActor person)
        {
            var screen = await clinic.UseAsync<Slice, Slice.Screen>(person, s => s.OpenAsync(Cancel));
            return (screen.MayChange, screen.Rules.Single(r => r.Subject == RetentionSubject.ContactNotes).KeepDays);
        }
    }

    private static Task<Slice.Outcome> SaveAsync(TestClinic clinic, PersonActor person, RetentionSubject subject, int days) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            person,
            s => s.SaveAsync(Guid.CreateVersion7(), new() { Subject = subject, KeepDays = days }, Cancel)
        );

    private Task<Slice.Screen> OpenAsync(TestClinic clinic) =>
        clinic.UseAsync<Slice, Slice.Screen>(_scene.AsOwner(clinic), s => s.OpenAsync(Cancel));
}
