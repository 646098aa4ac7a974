using Bunit;
using HairClinic.Web.Ui.Feedback;

namespace HairClinic.Web.Tests.Ui.Feedback;

public sealed class BusyButtonTests : UiTestContext
{
    [Fact]
    public async Task A_second_tap_while_it_works_does_nothing()
    {
        var work = new TaskCompletionSource();
        var begun = 0;
        var button = Render<BusyButton>(p =>
            p.Add(
                    b => b.OnPress,
                    () =>
                    {
                        begun++;
                        return work.Task;
                    }
                )
                .Add(b => b.Waiting, "Saving…")
                .AddChildContent("Save")
        );
        var first = button.Find("button").ClickAsync(new());
        Assert.True(button.Find("button").HasAttribute("disabled"));
        Assert.Equal(("true", "Saving…"), (button.Find("button").GetAttribute("aria-busy"), button.Find("button").TextContent.Trim()));
        var second = button.Find("button").ClickAsync(new());
        work.SetResult();
        await Task.WhenAll(first, second);
        Assert.Equal(1, begun);
        button.WaitForAssertion(() => Assert.False(button.Find("button").HasAttribute("disabled")));
    }

    [Fact]
    public async Task It_can_be_pressed_again_after_a_failure()
    {
        var button = Render<BusyButton>(p =>
            p.Add(b => b.OnPress, () => Task.FromException(new InvalidOperationException("no line"))).AddChildContent("Save")
        );
        await Assert.ThrowsAsync<InvalidOperationException>(() => button.Find("button").ClickAsync(new()));
        button.Render();
        Assert.False(button.Find("button").HasAttribute("disabled"));
    }

    [Fact]
    public void A_submit_button_rests_while_its_page_is_at_work() =>
        Assert.True(
            Render<BusyButton>(p => p.Add(b => b.Type, "submit").Add(b => b.Working, true))
                .Find("button[type=submit]")
                .HasAttribute("disabled")
        );
}
