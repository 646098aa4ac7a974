using Bunit;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Web.Features.Clients;
using HairClinic.Web.Tests.Ui;
using NodaTime;
using Slice = HairClinic.Web.Features.Clients.EndNeed;

namespace HairClinic.Web.Tests.Features.Clients.EndNeed;

public sealed class EndNeedFormTests : UiTestContext
{
    private static readonly LocalDate Today = new(2027, 2, 3);

    private static readonly Slice.UnitLine Worn = new(Guid.CreateVersion7(), "C-1-1", "Lace", UnitState.Resting);
    private static readonly Slice.UnitLine Ordered = new(Guid.CreateVersion7(), "C-1-2", "Lace", UnitState.Ordered);
    private static readonly Slice.UnitLine Draft = new(Guid.CreateVersion7(), "C-1-3", "Lace", UnitState.Specified);

    private static readonly Slice.VisitLine Ahead = new(Instant.FromUtc(2027, 2, 9, 10, 0), "Europe/London", "Elm Row", "Rebond");

    public EndNeedFormTests() => BeInteractive();

    [Fact]
    public void Each_unit_is_asked_about_with_what_can_become_of_it_and_a_draft_is_told_of()
    {
        var form = Form(new());

        Assert.Equal(["Call the order off", "Let it come"], Choices(form, Ordered));
        Assert.Equal(
            ["Give to the client", "Keep as an emergency spare", "Destroy it", "Give for training", "Decide later"],
            Choices(form, Worn)
        );
        Assert.Contains("It is not ordered any more.", form.Markup, StringComparison.Ordinal);
        Assert.Contains("never goes into the stock", form.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void For_training_a_unit_can_be_chosen_only_where_they_agreed()
    {
        Assert.True(Radio(Form(new()), "GivenForTraining").HasAttribute("disabled"));
        Assert.False(Radio(Form(new() { TrainingAgreed = true }), "GivenForTraining").HasAttribute("disabled"));
        Assert.Contains("/privacy-and-papers", Form(new()).Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_somebody_died_the_words_are_kind_visits_are_called_off_and_no_spare_is_kept()
    {
        var input = Start();
        var form = Form(new() { Visits = [Ahead] }, input);

        Radio(form, "Died").Change("Died");

        Assert.Equal((NeedEnd.Died, true), (input.Because, input.CallOffVisits));
        Assert.Contains("We are sorry.", form.Find("p[role=status]").TextContent, StringComparison.Ordinal);
        Assert.Equal(["Give to the family", "Destroy it", "Give for training", "Decide later"], Choices(form, Worn));
    }

    [Fact]
    public void What_becomes_of_visits_is_asked_where_nothing_follows_from_the_reason()
    {
        var input = Start();
        var form = Form(new() { Visits = [Ahead] }, input);

        Radio(form, "MovedAway").Change("MovedAway");
        Assert.True(input.CallOffVisits);
        Radio(form, "HairReturned").Change("HairReturned");

        Assert.Null(input.CallOffVisits);
        Assert.Contains("Call them off", form.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("Call them off", Form(new()).Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_not_said_is_asked_at_its_field()
    {
        var input = Start();
        var form = Form(new(), input, new EndNeedRules().Validate(input));

        Assert.Equal(
            2,
            form.FindAll(".summary a").Count(a => a.TextContent.Contains("Say what becomes of each unit.", StringComparison.Ordinal))
        );
        Assert.Contains("Choose why.", form.Markup, StringComparison.Ordinal);
        Assert.Contains("Choose the day.", form.Markup, StringComparison.Ordinal);
    }

    private static Slice.Input Start() => new() { Units = [new() { UnitId = Worn.Id }, new() { UnitId = Ordered.Id }] };

    private IRenderedComponent<EndNeedForm> Form(
        ScreenOf given,
        Slice.Input? input = null,
        FluentValidation.Results.ValidationResult? check = null
    ) =>
        Render<EndNeedForm>(p =>
            p.Add(
                    f => f.Screen,
                    new Slice.Screen("Ada Fenwick", "C-1", Today)
                    {
                        Units = [Worn, Ordered, Draft],
                        Visits = given.Visits,
                        TrainingAgreed = given.TrainingAgreed,
                    }
                )
                .Add(f => f.Input, input ?? Start())
                .Add(f => f.Check, check)
        );

    private static AngleSharp.Dom.IElement Radio(IRenderedComponent<EndNeedForm> form, string value) =>
        form.Find($"input[type=radio][value={value}]");

    private static IEnumerable<string> Choices(IRenderedComponent<EndNeedForm> form, Slice.UnitLine unit) =>
        form.FindAll("fieldset")
            .Single(f => f.TextContent.Contains(unit.Serial, StringComparison.Ordinal))
            .QuerySelectorAll("label.tap span")
            .Select(s => s.TextContent);

    private sealed record ScreenOf
    {
        public IReadOnlyList<Slice.VisitLine> Visits { get; init; } = [];
        public bool TrainingAgreed { get; init; }
    }
}
