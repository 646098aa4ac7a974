using Bunit;
using HairClinic.Web.Ui.Fields;

namespace HairClinic.Web.Tests.Ui.Fields;

public sealed class ComboTests : UiTestContext
{
    private static readonly ComboOption[] Adhesives =
    [
        new("a", "Adhesive A", "water-based acrylic"),
        new("b", "Adhesive B"),
        new("c", "Adhesive C"),
    ];
    private readonly List<string> _asked = [];
    private ComboOption? _value;

    [Fact]
    public void Typing_asks_once_it_is_long_enough_and_lists_what_was_found()
    {
        var combo = Show();
        combo.Find("input").Input("a");
        Assert.Empty(_asked);
        combo.Find("input").Input("ad");
        combo.WaitForAssertion(() => Assert.Equal(3, combo.FindAll("[role=option]").Count));
        Assert.Equal(["ad"], _asked);
        Assert.Equal("true", combo.Find("[role=combobox]").GetAttribute("aria-expanded"));
        Assert.Equal("3 found.", combo.Find("[role=status]").TextContent);
    }

    [Fact]
    public void Arrow_keys_move_the_active_option_around_the_list_and_enter_takes_it()
    {
        var combo = Open();
        Assert.Equal("f-Adhesive-option-0", Active(combo));
        combo.Find("input").KeyDown("ArrowUp");
        Assert.Equal("f-Adhesive-option-2", Active(combo));
        combo.Find("input").KeyDown("ArrowDown");
        combo.Find("input").KeyDown("ArrowDown");
        Assert.Equal("true", combo.FindAll("[role=option]")[1].GetAttribute("aria-selected"));
        combo.Find("input").KeyDown("Enter");
        Assert.Equal(Adhesives[1], _value);
        Assert.Equal("Adhesive B", combo.Find("[role=combobox]").GetAttribute("value"));
        Assert.Equal("false", combo.Find("[role=combobox]").GetAttribute("aria-expanded"));
    }

    [Fact]
    public void A_tap_takes_an_option()
    {
        var combo = Open();
        combo.FindAll("[role=option]")[2].MouseDown();
        Assert.Equal(Adhesives[2], _value);
        Assert.Equal("c", combo.Find("input[type=hidden]").GetAttribute("value"));
    }

    [Fact]
    public void Escape_closes_the_list_and_chooses_nothing()
    {
        var combo = Open();
        combo.Find("input").KeyDown("Escape");
        Assert.True(combo.Find("[role=listbox]").HasAttribute("hidden"));
        Assert.Null(_value);
    }

    [Fact]
    public void Typing_on_lets_go_of_what_was_chosen()
    {
        _value = Adhesives[0];
        var combo = Show();
        combo.Find("input").Input("Adhesive");
        Assert.Null(_value);
    }

    [Fact]
    public void Leaving_with_words_that_chose_nothing_is_explained()
    {
        var combo = Open();
        combo.Find("input").Blur();
        Assert.Contains("Choose one", combo.Find(".errors").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_found_is_said()
    {
        var combo = Show(nothing: true);
        combo.Find("input").Input("zz");
        combo.WaitForAssertion(() => Assert.Equal("Nothing found.", combo.Find("[role=status]").TextContent));
    }

    [Fact]
    public async Task A_key_struck_just_as_the_pause_ends_starts_the_search_anew_and_breaks_nothing()
    {
        var combo = Show(pause: TimeSpan.FromMilliseconds(1));

        // The pause ends while the renderer is busy with the next key.
        await combo.InvokeAsync(() =>
        {
            combo.Find("input").Input("ad");
            Thread.Sleep(50);
            combo.Find("input").Input("adh");
        });

        combo.WaitForAssertion(() => Assert.Equal(3, combo.FindAll("[role=option]").Count));
        Assert.Equal(["adh"], _asked);
        Assert.False(Renderer.UnhandledException.IsCompleted);
    }

    private static string? Active(IRenderedComponent<Combo> combo) => combo.Find("[role=combobox]").GetAttribute("aria-activedescendant");

    private IRenderedComponent<Combo> Open()
    {
        var combo = Show();
        combo.Find("input").Input("adhesive");
        combo.WaitForElements("[role=option]");
        return combo;
    }

    private IRenderedComponent<Combo> Show(bool nothing = false, TimeSpan pause = default) =>
        Render<Combo>(p =>
            p.Add(f => f.Label, "Adhesive")
                .Add(f => f.Name, "Adhesive")
                .Add(f => f.Pause, pause)
                .Add(
                    f => f.Search,
                    (text, _) =>
                    {
                        _asked.Add(text);
                        return Task.FromResult<IReadOnlyList<ComboOption>>(nothing ? [] : Adhesives);
                    }
                )
                .Bind(f => f.Value, _value, value => _value = value)
        );
}
