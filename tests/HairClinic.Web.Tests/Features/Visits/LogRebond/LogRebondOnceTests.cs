using HairClinic.Domain.Bonding;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Writes;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Visits.LogRebond;

namespace HairClinic.Web.Tests.Features.Visits.LogRebond;

/// <summary>Whatever is tapped twice, by one or by two, one rebond is in the book.</summary>
public sealed class LogRebondOnceTests(PgServer server)
{
    private readonly ChairScene _scene = new();

    [Fact]
    public async Task The_same_tap_sent_again_gives_the_first_answer()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        var (key, input) = (Guid.CreateVersion7(), await NormalAsync(clinic, _scene.Visit.Id));
        var first = await SaveAsync(clinic, key, input);

        var second = await SaveAsync(clinic, key, input);

        Assert.Equal((first.VisitId, first.DueOn, first.CuredAt), (second.VisitId, second.DueOn, second.CuredAt));
        Assert.Equal(first.Why, second.Why);
        Assert.Equal(2, await BondsAsync(clinic));
    }

    [Fact]
    public async Task The_same_tap_sent_four_times_at_once_logs_once()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        var (key, input) = (Guid.CreateVersion7(), await NormalAsync(clinic, _scene.Visit.Id));

        var answers = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => SaveAsync(clinic, key, input)));

        Assert.Single(answers.DistinctBy(a => (a.DueOn, a.CuredAt)));
        Assert.Equal(2, await BondsAsync(clinic));
    }

    [Fact]
    public async Task Of_two_who_log_the_same_visit_at_once_one_wins_and_the_other_is_told_what_was_logged()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        var mine = await NormalAsync(clinic, _scene.Visit.Id);
        var theirs = await NormalAsync(clinic, _scene.Visit.Id);
        theirs.UnitId = _scene.Spare.Id;

        var results = await Task.WhenAll(
            TryAsync(() => SaveAsync(clinic, Guid.CreateVersion7(), mine)),
            TryAsync(() => SaveAsync(clinic, Guid.CreateVersion7(), theirs, _scene.Colleague))
        );

        Assert.Single(results, r => r is null);
        Assert.Single(results, r => r is Refusal or OvertakenException);
        Assert.Equal(2, await BondsAsync(clinic));
        var told = (await ScreenAsync(clinic, _scene.Visit.Id)).Logged!;
        Assert.Contains(told.By, new[] { _scene.Stylist.Name, _scene.Colleague.Name });
        Assert.Contains(told.Serial, new[] { _scene.Worn.Serial, _scene.Spare.Serial });
        Assert.NotNull(told.DueOn);
    }

    [Fact]
    public async Task A_second_log_of_the_same_visit_is_told_so()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        var input = await NormalAsync(clinic, _scene.Visit.Id);
        await SaveAsync(clinic, Guid.CreateVersion7(), input);
        input.WornBondId = (await ScreenAsync(clinic, _scene.Visit.Id)).Worn!.BondId;

        var refusal = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, Guid.CreateVersion7(), input));

        Assert.Equal("This visit is logged already.", refusal.Message);
    }

    [Fact]
    public async Task A_form_that_was_opened_on_another_bond_than_is_on_the_head_now_is_refused_and_the_bond_stays()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        await clinic.LayAsync(_scene.BookNext);
        var input = await NormalAsync(clinic, _scene.Next.Id);
        await SaveAsync(clinic, Guid.CreateVersion7(), await NormalAsync(clinic, _scene.Visit.Id));

        var refusal = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, Guid.CreateVersion7(), input, _scene.Colleague));

        Assert.StartsWith("Another bond is on this head than when you opened this form.", refusal.Message, StringComparison.Ordinal);
        Assert.Equal(
            _scene.Visit.Id,
            await clinic.ReadAsync(db => db.Bonds.Where(b => b.RemovedOn == null).Select(b => b.VisitId).SingleAsync(Cancellation))
        );
    }

    [Fact]
    public async Task Two_visits_of_one_head_logged_at_once_leave_one_open_bond()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        await clinic.LayAsync(_scene.BookNext);
        var one = await NormalAsync(clinic, _scene.Visit.Id);
        var other = await NormalAsync(clinic, _scene.Next.Id);
        other.UnitId = _scene.Spare.Id;

        var results = await Task.WhenAll(
            TryAsync(() => SaveAsync(clinic, Guid.CreateVersion7(), one)),
            TryAsync(() => SaveAsync(clinic, Guid.CreateVersion7(), other, _scene.Colleague))
        );

        Assert.Single(results, r => r is null);
        Assert.Single(results, r => r is Refusal or OvertakenException);
        Assert.Equal(1, await clinic.ReadAsync(db => db.Bonds.CountAsync(b => b.RemovedOn == null, Cancellation)));
    }

    [Fact]
    public async Task A_unit_that_the_book_has_on_another_head_is_refused_in_a_sentence()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _scene.Lay);
        await clinic.LayAsync(later =>
        {
            // A book taken over may say that the spare rests and yet be bonded elsewhere.
            var other = later.AddClient("C-2", "Bo Larch", _scene.Salon);
            var stray = new Bond(Guid.CreateVersion7(), _scene.Spare.Id, other.Id, ChairScene.BondedOn, null, Attachment.Liquid, null);
            later.Db.Bonds.Add(stray);
        });
        var input = await NormalAsync(clinic, _scene.Visit.Id);
        input.UnitId = _scene.Spare.Id;

        var refusal = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, Guid.CreateVersion7(), input));

        Assert.StartsWith("By the book this unit is on another head.", refusal.Message, StringComparison.Ordinal);
    }

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private static async Task<Exception?> TryAsync(Func<Task> act)
    {
        try
        {
            await act();
            return null;
        }
        catch (Exception e)
        {
            return e;
        }
    }

    private async Task<Slice.Screen> ScreenAsync(TestClinic clinic, Guid visitId) =>
        Assert.IsType<Slice.Screen>(
            await clinic.UseAsync<Slice, Slice.Screen?>(
                clinic.Acting(_scene.Stylist, _scene.Salon),
                s => s.OpenAsync(visitId, Cancellation)
            )
        );

    private async Task<Slice.Input> NormalAsync(TestClinic clinic, Guid visitId)
    {
        var input = (await ScreenAsync(clinic, visitId)).Start;
        (input.FoundLifted, input.WaitsKept) = (false, true);
        return input;
    }

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Guid key, Slice.Input input, Person? by = null) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(by ?? _scene.Stylist, _scene.Salon),
            s => s.SaveAsync(key, input, Cancellation)
        );

    private static Task<int> BondsAsync(TestClinic clinic) => clinic.ReadAsync(db => db.Bonds.CountAsync(Cancellation));
}
