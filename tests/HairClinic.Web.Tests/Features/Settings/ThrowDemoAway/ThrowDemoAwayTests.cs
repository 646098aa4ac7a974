using Bunit;
using HairClinic.Domain.Practices;
using HairClinic.Web.Features.Settings;
using HairClinic.Web.Tests.Ui;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Slice = HairClinic.Web.Features.Settings.ThrowDemoAway;

namespace HairClinic.Web.Tests.Features.Settings.ThrowDemoAway;

public sealed class ThrowDemoAwayTests(PgServer server) : PracticeTest(server)
{
    [Fact]
    public async Task The_demo_goes_in_one_act_and_leaves_a_code_that_opens_the_guide()
    {
        await using var clinic = await OpenAsync(scene => scene.Settings.MarkAsDemo());

        var outcome = await ThrowAsync(clinic, AsOwner(clinic), "practice under test");

        Assert.True(outcome.Rows > 0);
        Assert.False(await clinic.ReadAsync(db => db.Practices.AnyAsync(p => p.Id == clinic.PracticeId, Cancel)));
        Assert.True(await clinic.AsAsync(clinic.Job, s => Task.FromResult(s.GetRequiredService<SetupCode>().Opens(outcome.SetupCode))));
    }

    [Fact]
    public async Task Another_name_throws_nothing_away()
    {
        await using var clinic = await OpenAsync(scene => scene.Settings.MarkAsDemo());

        await Refused.SayingAsync(
            "That is not the practice's name. Nothing was thrown away.",
            () => ThrowAsync(clinic, AsOwner(clinic), "Some practice")
        );

        Assert.True(await clinic.ReadAsync(db => db.PracticeSettings.AnyAsync(Cancel)));
    }

    [Fact]
    public async Task A_real_practice_is_never_thrown_away_and_a_manager_throws_none()
    {
        await using var real = await OpenAsync();
        Assert.Null(await OwnerAsync<Slice, Slice.Screen?>(real, s => s.OpenAsync(Cancel)));
        await Refused.SayingAsync(
            "Only the invented practice can be thrown away, and only by its owner.",
            () => ThrowAsync(real, AsOwner(real), "Practice under test")
        );
        await using var demo = await OpenAsync(scene => scene.Settings.MarkAsDemo());

        await Refused.SayingAsync(
            "Only the invented practice can be thrown away, and only by its owner.",
            () => ThrowAsync(demo, AsManager(demo), "Practice under test")
        );

        Assert.True(await real.ReadAsync(db => db.PracticeSettings.AnyAsync(Cancel)));
        Assert.True(await demo.ReadAsync(db => db.PracticeSettings.AnyAsync(Cancel)));
    }

    private static Task<Slice.Outcome> ThrowAsync(TestClinic clinic, HairClinic.Web.Fence.PersonActor actor, string name) =>
        clinic.UseAsync<Slice, Slice.Outcome>(actor, s => s.SaveAsync(new Slice.Input { Name = name }, Cancel));

    public sealed class Form : UiTestContext
    {
        [Fact]
        public void It_asks_for_the_name_and_says_what_goes()
        {
            BeInteractive();
            var input = new Slice.Input();
            var form = Render<ThrowDemoAwayForm>(p =>
                p.Add(f => f.Screen, new Slice.Screen("Invented Practice", 300, 4100)).Add(f => f.Input, input)
            );

            form.Find("input").Change("Invented Practice");

            Assert.Equal("Invented Practice", input.Name);
            Assert.Contains("300 clients and 4100 visits", form.Markup, StringComparison.Ordinal);
        }
    }
}
