using Bunit;
using FluentValidation;
using FluentValidation.Results;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Wear;
using HairClinic.Web.Features.Clients;
using HairClinic.Web.Shell.Edits;
using HairClinic.Web.Tests.Ui;
using HairClinic.Web.Ui.Feedback;
using NodaTime;
using Slice = HairClinic.Web.Features.Clients.EditClient;

namespace HairClinic.Web.Tests.Features.Clients.EditClient;

public sealed class EditClientFormTests : UiTestContext
{
    private readonly Slice.Input _input = new()
    {
        Name = "Ada Fenwick",
        Code = "C-1",
        WashEveryDays = 10,
    };

    public EditClientFormTests() => BeInteractive();

    [Fact]
    public void Weekdays_are_tapped_on_and_off()
    {
        var form = Render<EditClientForm>(p => p.Add(f => f.Input, _input));
        var days = form.FindAll("fieldset .taps input[type=checkbox]");

        days[1].Change(true);
        form.FindAll("fieldset .taps input[type=checkbox]")[4].Change(true);
        form.FindAll("fieldset .taps input[type=checkbox]")[1].Change(false);

        Assert.Equal(WeekdaySet.Of(IsoDayOfWeek.Friday), _input.PreferredDays);
    }

    [Fact]
    public void A_rhythm_from_an_old_book_stays_a_choice() =>
        Assert.Contains("every 10 days", Render<EditClientForm>(p => p.Add(f => f.Input, _input)).Markup, StringComparison.Ordinal);

    [Fact]
    public void What_the_rules_say_stands_at_the_field_and_leads_there()
    {
        _input.Code = "";
        var check = new EditClientRules().Validate(_input);

        var form = Render<EditClientForm>(p => p.Add(f => f.Input, _input).Add(f => f.Check, check));

        Assert.Equal("true", form.Find("#f-Code").GetAttribute("aria-invalid"));
        Assert.Contains(form.FindAll(".summary a"), a => a.GetAttribute("href")!.EndsWith("#f-Code", StringComparison.Ordinal));
    }

    [Fact]
    public void Whoever_was_let_in_reads_the_home_salon_and_cannot_choose_another()
    {
        var form = Render<EditClientForm>(p => p.Add(f => f.Input, _input).Add(f => f.AtHome, false));

        Assert.True(form.Find("#f-HomeSalonId").HasAttribute("disabled"));
        Assert.False(Render<EditClientForm>(p => p.Add(f => f.Input, _input)).Find("#f-HomeSalonId").HasAttribute("disabled"));
    }

    [Fact]
    public void What_the_book_refuses_about_a_field_stands_there_with_its_blanks_filled_in()
    {
        var refusal = new Refusal("“{0}” does not look like a phone number; write it such as {1}.", "abc", "(201) 555-0123");
        var check = new ValidationResult([FaultText.ToFieldFailure(nameof(Slice.Input.Phone), refusal)]);

        var form = Render<EditClientForm>(p => p.Add(f => f.Input, _input).Add(f => f.Check, check));

        Assert.Equal("true", form.Find("#f-Phone").GetAttribute("aria-invalid"));
        Assert.Equal(
            "“abc” does not look like a phone number; write it such as (201) 555-0123.",
            form.Find("#f-Phone-errors li").TextContent
        );
    }

    [Fact]
    public void The_proposed_code_is_taken_at_one_tap_and_then_offered_no_more()
    {
        var form = Render<EditClientForm>(p => p.Add(f => f.Input, _input).Add(f => f.Proposed, "KX7-W4M"));

        form.FindAll("button").Single(b => b.TextContent == "Use KX7-W4M instead, picked at random").Click();

        Assert.Equal(("KX7-W4M", "KX7-W4M"), (_input.Code, _input.Proposed));
        Assert.DoesNotContain(form.FindAll("button"), b => b.TextContent.Contains("picked at random", StringComparison.Ordinal));
    }

    [Fact]
    public void What_another_saved_is_shown_field_by_field_and_can_be_taken()
    {
        FieldChange? taken = null;
        var changes = EditMerge.MergeChanges(
            _input with
            { },
            _input with
            {
                Phone = "+441632960003",
                Note = "Window",
            },
            _input with
            {
                Phone = "+441632960002",
            }
        );

        var list = Render<SavedMeanwhile>(p => p.Add(c => c.Changes, changes).Add(c => c.OnTake, change => taken = change));
        list.Find("button").Click();

        Assert.Equal(2, list.FindAll("li").Count);
        Assert.Equal("Phone", taken!.Field.Label);
    }
}
