using Bunit;
using HairClinic.Domain.Wear;
using HairClinic.Web.Ui.Fields;
using NodaTime;

namespace HairClinic.Web.Tests.Ui.Fields;

public sealed class SinceWhenFieldTests : UiTestContext
{
    private static readonly LocalDate Today = new(2027, 2, 3);
    private (LocalDate? On, SinceWhen? About) _answer;

    public SinceWhenFieldTests() => BeInteractive();

    [Fact]
    public void Five_answers_are_one_tap_each()
    {
        Assert.Equal(["Today", "Yesterday", "2–3 days ago", "About a week ago", "Don’t know"], Words(Show()));
        Assert.Equal((Today, null), Tap(0));
        Assert.Equal((Today.PlusDays(-1), null), Tap(1));
        Assert.Equal((null, SinceWhen.TwoOrThreeDays), Tap(2));
        Assert.Equal((null, SinceWhen.AboutAWeek), Tap(3));
        Assert.Equal((null, SinceWhen.NotKnown), Tap(4));
    }

    [Fact]
    public void A_day_on_the_calendar_says_more_and_no_other_answer_stands()
    {
        _answer = (null, SinceWhen.AboutAWeek);

        Show().Find("input[type=date]").Change("2027-01-28");

        Assert.Equal((new LocalDate(2027, 1, 28), null), _answer);
        Assert.Empty(Show().FindAll("input[type=radio][checked]"));
    }

    [Fact]
    public void What_was_not_there_yet_is_not_offered()
    {
        Assert.Equal(["Today", "Yesterday", "2–3 days ago", "Don’t know"], Words(Show(Today.PlusDays(-4))));
        Assert.Equal(["Today", "Don’t know"], Words(Show(Today)));
        Assert.Equal("2027-02-03", Show(Today).Find("input[type=date]").GetAttribute("min"));
    }

    private (LocalDate?, SinceWhen?) Tap(int number)
    {
        Show().FindAll("input[type=radio]")[number].Change(true);
        Assert.Single(Show().FindAll("input[type=radio][checked]"));
        return _answer;
    }

    private static IEnumerable<string> Words(IRenderedComponent<SinceWhenField> field) =>
        field.FindAll("label.tap").Select(l => l.TextContent.Trim());

    private IRenderedComponent<SinceWhenField> Show(LocalDate? notBefore = null) =>
        Render<SinceWhenField>(p =>
            p.Add(f => f.Label, "Since when?")
                .Add(f => f.Name, "LiftedOn")
                .Add(f => f.Today, Today)
                .Add(f => f.NotBefore, notBefore)
                .Add(f => f.On, _answer.On)
                .Add(f => f.About, _answer.About)
                .Add(f => f.Changed, answer => _answer = answer)
        );
}
