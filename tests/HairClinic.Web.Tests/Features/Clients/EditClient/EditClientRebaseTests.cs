using HairClinic.Domain.Wear;
using HairClinic.Web.Features.Clients.EditClient;
using NodaTime;
using Input = HairClinic.Web.Features.Clients.EditClient.EditClient.Input;

namespace HairClinic.Web.Tests.Features.Clients.EditClient;

public sealed class EditClientRebaseTests
{
    private static readonly Input Opened = new()
    {
        Name = "Ada Fenwick",
        Code = "C-1",
        Phone = "+441632960001",
        Version = 1,
    };

    [Fact]
    public void What_only_the_other_changed_is_taken_over()
    {
        var typed = Opened with { Name = "Ada Fenn" };

        var change = Assert.Single(EditClientRebase.Onto(Opened, Opened with { Email = "ada@example.org", Version = 2 }, typed));

        Assert.Equal(("E-mail", null, "ada@example.org", false), (change.Label, change.Before, change.Theirs, change.Clashes));
        Assert.Equal(("Ada Fenn", "ada@example.org", 2u), (typed.Name, typed.Email, typed.Version));
    }

    [Fact]
    public void What_both_changed_keeps_what_was_typed_until_theirs_is_taken()
    {
        var typed = Opened with { Phone = "+441632960002" };

        var change = Assert.Single(EditClientRebase.Onto(Opened, Opened with { Phone = "+441632960003", Version = 2 }, typed));

        Assert.True(change.Clashes);
        Assert.Equal("+441632960002", typed.Phone);
        change.TakeTheirs();
        Assert.Equal("+441632960003", typed.Phone);
    }

    [Fact]
    public void Both_typing_the_same_is_no_clash()
    {
        var typed = Opened with { Note = "Window seat" };

        var change = Assert.Single(EditClientRebase.Onto(Opened, Opened with { Note = "Window seat " }, typed));

        Assert.False(change.Clashes);
    }

    [Fact]
    public void An_empty_box_and_nothing_are_the_same() =>
        Assert.Empty(EditClientRebase.Onto(Opened, Opened with { Note = "" }, Opened with { }));

    [Fact]
    public void Every_field_of_the_form_is_compared()
    {
        var saved = new Input
        {
            Name = "N",
            CalledAs = "n",
            Code = "K",
            HomeSalonId = Guid.CreateVersion7(),
            Phone = "P",
            Email = "E",
            BirthDate = new LocalDate(1990, 1, 1),
            PreferredDays = WeekdaySet.Of(IsoDayOfWeek.Friday),
            WashEveryDays = 7,
            Note = "T",
            LeftOn = new LocalDate(2027, 1, 1),
            Version = 2,
        };
        var typed = Opened with { };

        EditClientRebase.Onto(Opened, saved, typed);

        Assert.Equal(saved, typed);
    }
}
