using Bunit;
using HairClinic.Domain.Practices;
using HairClinic.Web.Features.Settings;
using HairClinic.Web.Tests.Ui;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Settings.KeepDefaults;

namespace HairClinic.Web.Tests.Features.Settings.FirstRun.KeepDefaults;

public sealed class KeepDefaultsTests(PgServer server) : UiTestContext
{
    private static CancellationToken Cancel => Xunit.TestContext.Current.CancellationToken;

    [Fact]
    public async Task Keeping_all_lays_the_trade_s_services_bases_and_windows()
    {
        await using var clinic = await OpenAsync();

        await SaveAsync(clinic, Slice.SuggestTradeDefaults());

        Assert.Equal(
            (TradeDefaults.Services.Count, TradeDefaults.Bases.Count, TradeDefaults.HoldWindows.Count),
            await clinic.ReadAsync(async db =>
                (
                    await db.ServiceKinds.CountAsync(Cancel),
                    await db.BaseMaterials.CountAsync(Cancel),
                    await db.HoldWindowRules.CountAsync(Cancel)
                )
            )
        );
    }

    [Fact]
    public async Task What_is_changed_or_left_out_before_keeping_is_kept_so_and_the_general_window_always_stays()
    {
        await using var clinic = await OpenAsync();
        var input = Slice.SuggestTradeDefaults();
        input.Services[0].Minutes = 75;
        input.Services[1].Keep = false;
        foreach (var window in input.Windows)
            window.Keep = false;

        await SaveAsync(clinic, input);

        var rule = await clinic.ReadAsync(db => db.HoldWindowRules.SingleAsync(Cancel));
        Assert.Equal((null, null), (rule.BaseMaterialId, (object?)rule.Attachment));
        var names = await clinic.ReadAsync(db =>
            db.ServiceKinds.Select(k => new { k.Name, Minutes = k.Steps.Sum(s => s.Minutes) }).ToListAsync(Cancel)
        );
        Assert.DoesNotContain(names, n => n.Name == input.Services[1].Name);
        Assert.Contains(names, n => n.Name == input.Services[0].Name && n.Minutes == 75);
    }

    [Fact]
    public async Task A_second_time_is_refused()
    {
        await using var clinic = await OpenAsync();
        await SaveAsync(clinic, Slice.SuggestTradeDefaults());

        await Refused.SayingAsync(
            "Services and hold windows are there already. Change them under Practice.",
            () => SaveAsync(clinic, Slice.SuggestTradeDefaults())
        );
    }

    [Fact]
    public void A_service_left_out_cannot_be_typed_into_and_the_general_window_cannot_be_left_out()
    {
        BeInteractive();
        var input = Slice.SuggestTradeDefaults();
        var form = Render<KeepDefaultsForm>(p => p.Add(f => f.Input, input));

        form.FindAll("input[type=checkbox]")[0].Change(false);

        Assert.False(input.Services[0].Keep);
        Assert.True(form.Find("[name='Services[0].Minutes']").HasAttribute("disabled"));
        Assert.True(form.FindAll("input[type=checkbox]")[input.Services.Count].HasAttribute("disabled"));
    }

    private Task<TestClinic> OpenAsync() => TestClinic.OpenAsync(server);

    private static Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        clinic.UseAsync<Slice, Slice.Outcome>(clinic.Job, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
}
