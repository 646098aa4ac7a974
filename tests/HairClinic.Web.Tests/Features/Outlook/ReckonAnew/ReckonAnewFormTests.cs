using Bunit;
using HairClinic.Domain.Practices;
using HairClinic.Web.Features.Outlook.ReckonAnew;
using HairClinic.Web.Tests.Ui;
using HairClinic.Web.Workers;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Web.Tests.Features.Outlook.ReckonAnew;

public sealed class ReckonAnewFormTests(PgServer server) : UiTestContext
{
    [Fact]
    public async Task It_is_asked_for_followed_and_ends_with_a_way_to_the_new_figures()
    {
        Salon salon = null!;
        Person owner = null!;
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.LayPractice("North");
                salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 2);
                owner = scene.Hire("Ola Test", StaffRole.Owner, salon);
            }
        );

        await clinic.AsAsync(
            clinic.Acting(owner, salon),
            async scope =>
            {
                Services.AddSingleton(scope.GetRequiredService<Web.Features.Outlook.ReckonAnew.ReckonAnew>());
                BeInteractive();
                var form = Render<ReckonAnewForm>();
                form.WaitForElement("button").Click();
                form.WaitForState(() => form.Markup.Contains("Waiting for its turn", StringComparison.Ordinal), TimeSpan.FromSeconds(20));
                Assert.Contains("Stop it", form.Markup, StringComparison.Ordinal);

                await clinic.UseAsync<Reckoner, bool>(clinic.Job, r => r.RunAsync(Xunit.TestContext.Current.CancellationToken));

                form.WaitForState(() => form.Markup.Contains("Show the new figures", StringComparison.Ordinal), TimeSpan.FromSeconds(20));
                Assert.Contains("Reckoned on", form.Markup, StringComparison.Ordinal);
                return true;
            }
        );
    }
}
