using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Wear;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Tests.Features.Wear;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Tests.Workers;

/// <summary>Bonded ten days before a Wednesday, so on a Sunday; the salon is open from Tuesday to Saturday.</summary>
public sealed class DueDateRefresherTests(PgServer server)
{
    private readonly DueList _list = new();
    private Bond _before = null!;
    private Client _client = null!;

    private LocalDate Applied => _list.Today.PlusDays(-10);

    [Fact]
    public async Task Another_hold_window_moves_opening_and_closing_and_says_so()
    {
        await using var clinic = await OpenAsync();

        var after = await ChangeAsync(clinic, scene => scene.Db.HoldWindowRules.Single(AnyBase).Edit(null, null, null, 3, 4));

        Assert.Equal((Applied.PlusWeeks(4), Applied.PlusWeeks(6)), (_before.OpensOn, _before.ClosesOn));
        Assert.Equal(Applied.PlusWeeks(4), after.ClosesOn);
        Assert.Equal((DueRuleName.HoldWindow, 3, 4), (after.DueReasons[0].Rule, after.DueReasons[0].Amount, after.DueReasons[0].UpTo));
        Assert.True(after.DueOn <= after.ClosesOn);
    }

    [Fact]
    public async Task A_closure_over_the_due_day_moves_it_to_the_nearest_open_day()
    {
        await using var clinic = await OpenAsync();

        var after = await ChangeAsync(
            clinic,
            scene => Salon(scene).AddClosure(Guid.CreateVersion7(), _before.DueOn, _before.DueOn, "Stocktaking")
        );

        Assert.NotEqual(_before.DueOn, after.DueOn);
        Assert.Equal((_before.OpensOn, _before.ClosesOn), (after.OpensOn, after.ClosesOn));
        Assert.Contains(after.DueReasons, r => r.Rule == DueRuleName.MovedToOpenDay && r.To == after.DueOn);
    }

    [Fact]
    public async Task A_preferred_weekday_is_kept_and_named_as_the_reason()
    {
        await using var clinic = await OpenAsync();
        var liked = _before.DueOn.DayOfWeek == IsoDayOfWeek.Friday ? IsoDayOfWeek.Thursday : IsoDayOfWeek.Friday;

        var after = await ChangeAsync(
            clinic,
            scene => scene.Db.Clients.Single(c => c.Id == _client.Id).SetPreferences(WeekdaySet.Of(liked), null),
            _client.Id
        );

        Assert.Equal(liked, after.DueOn.DayOfWeek);
        Assert.Contains(after.DueReasons, r => r.Rule == DueRuleName.MovedToPreferredWeekday);
    }

    [Fact]
    public async Task Asked_for_one_client_it_leaves_the_others_alone()
    {
        Client other = null!;
        await using var clinic = await OpenAsync(l => other = l.Bonded("other", 10).Client);

        var after = await ChangeAsync(clinic, scene => scene.Db.HoldWindowRules.Single(AnyBase).Edit(null, null, null, 3, 4), other.Id);

        Assert.Equal(_before.ClosesOn, after.ClosesOn);
    }

    [Fact]
    public async Task A_bond_that_was_taken_off_keeps_the_dates_it_had()
    {
        await using var clinic = await OpenAsync(bond: b => b.Remove(_list.Today, RemovalReason.Scheduled));

        var after = await ChangeAsync(clinic, scene => scene.Db.HoldWindowRules.Single(AnyBase).Edit(null, null, null, 3, 4));

        Assert.Equal(_before.ClosesOn, after.ClosesOn);
    }

    [Fact]
    public async Task Bonds_whose_window_was_taken_away_keep_their_dates_and_the_others_get_theirs()
    {
        Bond taped = null!;
        await using var clinic = await OpenAsync(l =>
            typeof(Bond).GetProperty(nameof(Bond.Attachment))!.SetValue(taped = l.Bonded("taped", 10).Bond, Attachment.Tape)
        );

        var after = await ChangeAsync(
            clinic,
            scene =>
            {
                scene.Db.HoldWindowRules.Remove(scene.Db.HoldWindowRules.Single(AnyBase));
                scene.Db.HoldWindowRules.Single(r => r.Attachment == Attachment.Tape).Edit(null, null, Attachment.Tape, 1, 2);
            }
        );

        Assert.Equal(_before.ClosesOn, after.ClosesOn);
        Assert.Equal(Applied.PlusWeeks(2), (await BondAsync(clinic, taped.Id)).ClosesOn);
        Assert.All(await Letterbox.ItemsAsync(clinic), item => Assert.NotNull(item.DoneAt));
    }

    [Fact]
    public async Task More_bonds_than_one_batch_are_all_seen()
    {
        await using var clinic = await OpenAsync(l =>
        {
            for (var i = 0; i < 500; i++)
                l.Bonded($"C{i}", 10, spare: null);
        });

        await ChangeAsync(clinic, scene => scene.Db.HoldWindowRules.Single(AnyBase).Edit(null, null, null, 3, 4));

        var closing = await clinic.ReadAsync(db =>
            db.Bonds.Select(b => b.ClosesOn).Distinct().ToListAsync(TestContext.Current.CancellationToken)
        );
        Assert.Equal([Applied.PlusWeeks(4)], closing);
    }

    private static System.Linq.Expressions.Expression<Func<HoldWindowRule, bool>> AnyBase =>
        r => r.BaseMaterialId == null && r.AdhesiveId == null && r.Attachment == null;

    private async Task<TestClinic> OpenAsync(Action<DueList>? more = null, Action<Bond>? bond = null) =>
        await TestClinic.OpenAsync(
            server,
            _list.Lay(l =>
            {
                (_client, _before) = l.Bonded("C-1", 10);
                bond?.Invoke(_before);
                more?.Invoke(l);
            })
        );

    /// <summary>Changes something, asks for the refresh in the same save as the screens do, and lets a worker do it.</summary>
    private async Task<Bond> ChangeAsync(TestClinic clinic, Action<Scene> change, Guid? clientId = null)
    {
        await clinic.LayAsync(scene =>
        {
            change(scene);
            scene.Db.WorkItems.Add(WorkItemFactory.RefreshDueDates(clientId, scene.Now));
        });
        await Letterbox.WorkAsync(clinic, new Letterbox());
        return await BondAsync(clinic, _before.Id);
    }

    private static Task<Bond> BondAsync(TestClinic clinic, Guid id) =>
        clinic.ReadAsync(db => db.Bonds.AsNoTracking().SingleAsync(b => b.Id == id, TestContext.Current.CancellationToken));

    private Domain.Practices.Salon Salon(Scene scene) => scene.Db.Salons.Include(s => s.Closures).Single(s => s.Id == _list.ElmRow.Id);
}
