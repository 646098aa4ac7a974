using Bunit;
using HairClinic.Domain.Practices;
using HairClinic.Web.Features.Outlook;
using HairClinic.Web.Learning;
using HairClinic.Web.Tests.Ui;
using HairClinic.Web.Workers;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Web.Tests.Features.Outlook.Recalculate;

public sealed class RecalculateFormTests(PgServer server) : UiTestContext
{
    [Fact]
    public async Task It_is_asked_for_followed_and_ends_with_a_way_to_the_new_figures() =>
        await OnPageAsync(async clinic =>
        {
            var form = Render<RecalculateForm>();
            form.WaitForElement("button").Click();
            form.WaitForState(() => form.Markup.Contains("Waiting for its turn", StringComparison.Ordinal), Patience);
            Assert.Contains("Stop it", form.Markup, StringComparison.Ordinal);

            await clinic.UseAsync<RecalculationRunner, bool>(clinic.Job, r => r.RunAsync(Cancel));

            form.WaitForState(() => form.Markup.Contains("Show the new figures", StringComparison.Ordinal), Patience);
            Assert.Contains("Calculated on", form.Markup, StringComparison.Ordinal);
        });

    [Fact]
    public async Task Opened_while_one_goes_on_it_follows_that_to_its_end() =>
        await OnPageAsync(async clinic =>
        {
            await clinic.ReadAsync(db => RecalculationQueue.RequestAsync(db, null, clinic.Clock.GetCurrentInstant(), Cancel));
            var form = Render<RecalculateForm>();
            form.WaitForState(() => form.Markup.Contains("Waiting for its turn", StringComparison.Ordinal), Patience);

            await clinic.UseAsync<RecalculationRunner, bool>(clinic.Job, r => r.RunAsync(Cancel));

            form.WaitForState(() => form.Markup.Contains("Show the new figures", StringComparison.Ordinal), Patience);
            Assert.Contains("Recalculate", form.Markup, StringComparison.Ordinal);
        });

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    private static CancellationToken Cancel => Xunit.TestContext.Current.CancellationToken;

    private async Task OnPageAsync(Func<TestClinic, Task> act)
    {
        Salon salon = null!;
        Person owner = null!;
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("North");
                salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 2);
                owner = scene.Hire("Ola Test", StaffRole.Owner, salon);
            }
        );
        await clinic.AsAsync(
            clinic.Acting(owner, salon),
            async scope =>
            {
                Services.AddSingleton(scope.GetRequiredService<Web.Features.Outlook.Recalculate>());
                BeInteractive();
                await act(clinic);
                return true;
            }
        );
    }
}
