using HairClinic.Web.Features.Settings;
using HairClinic.Web.Shell.Edits;
using NodaTime;
using Chairs = HairClinic.Web.Features.Settings.EditChairs;
using Client = HairClinic.Web.Features.Clients.EditClient.Input;
using Factors = HairClinic.Web.Features.Settings.WearFactors;
using Staff = HairClinic.Web.Features.Settings.EditPerson;
using Workshop = HairClinic.Web.Features.Settings.EditWorkshop.Input;

namespace HairClinic.Web.Tests.Shell.Edits;

public sealed class EditMergeTests
{
    private static readonly Client Opened = new()
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

        var change = Assert.Single(EditMerge.MergeChanges(Opened, Opened with { Email = "ada@example.org", Version = 2 }, typed));

        Assert.Equal(("E-mail", null, "ada@example.org", false), (change.Field.Label, change.Before, change.Theirs, change.Clashes));
        Assert.Equal(("Ada Fenn", "ada@example.org", 2u), (typed.Name, typed.Email, typed.Version));
    }

    [Fact]
    public void Both_typing_the_same_is_no_clash()
    {
        var typed = Opened with { Note = "Window seat" };

        var change = Assert.Single(EditMerge.MergeChanges(Opened, Opened with { Note = "Window seat " }, typed));

        Assert.False(change.Clashes);
    }

    [Fact]
    public void An_empty_box_and_nothing_are_the_same() =>
        Assert.Empty(EditMerge.MergeChanges(Opened, Opened with { Note = "" }, Opened with { }));

    [Fact]
    public void What_was_agreed_to_in_one_form_stays_there()
    {
        var typed = Opened with { SharedPhone = "+441632960001", Proposed = "KX7" };

        EditMerge.MergeChanges(Opened, Opened with { Version = 2 }, typed);

        Assert.Equal(("+441632960001", "KX7"), (typed.SharedPhone, typed.Proposed));
    }

    [Fact]
    public void Choices_of_both_are_put_together()
    {
        Guid elm = Guid.CreateVersion7(),
            canal = Guid.CreateVersion7(),
            harbour = Guid.CreateVersion7();
        var opened = new Staff.Input { Salons = [elm, canal] };
        var typed = EditMerge.Snapshot(opened);
        typed.Salons.Remove(canal);

        var change = Assert.Single(EditMerge.MergeChanges(opened, new Staff.Input { Salons = [elm, canal, harbour] }, typed));

        Assert.Equal((harbour, false, true), (change.Of, change.Before, change.Theirs));
        Assert.Equal([elm, harbour], typed.Salons);
    }

    [Fact]
    public void Rows_are_compared_one_by_one()
    {
        DaysOffInput kept = Days(1, "Works"),
            dropped = Days(5, "Fair"),
            mine = Days(9, "Stocktaking");
        var opened = new Workshop { Closures = [kept, dropped, mine] };
        var typed = EditMerge.Snapshot(opened);
        typed.Closures[2].Reason = "Counting";
        typed.Closures.Add(new DaysOffInput { From = new LocalDate(2027, 8, 1), To = new LocalDate(2027, 8, 2) });
        var saved = new Workshop { Closures = [kept with { Reason = "Roof" }, mine, Days(20, "Feast")] };

        var changes = EditMerge.MergeChanges(opened, saved, typed);

        Assert.Equal(3, changes.Count);
        Assert.All(changes, c => Assert.False(c.Clashes));
        Assert.Equal(["Roof", "Counting", "", "Feast"], typed.Closures.Select(c => c.Reason));
    }

    [Fact]
    public void A_row_one_took_out_and_the_other_changed_is_a_clash()
    {
        var opened = new Workshop { Closures = [Days(1, "Works")] };
        var changed = EditMerge.Snapshot(opened);
        changed.Closures[0].Reason = "Roof";

        var theyTookOut = EditMerge.Snapshot(changed);
        Assert.True(Assert.Single(EditMerge.MergeChanges(opened, new Workshop(), theyTookOut)).Clashes);
        Assert.Single(theyTookOut.Closures);

        var iTookOut = new Workshop();
        var clash = Assert.Single(EditMerge.MergeChanges(opened, changed, iTookOut));
        Assert.True(clash.Clashes);
        clash.TakeTheirs();
        Assert.Equal("Roof", Assert.Single(iTookOut.Closures).Reason);
    }

    [Fact]
    public void An_order_the_other_gave_is_not_undone_by_a_name()
    {
        Chairs.ChairLine one = new() { Id = Guid.CreateVersion7(), Name = "Window" },
            two = new() { Id = Guid.CreateVersion7(), Name = "Corner" };
        var opened = new Chairs.Input { Chairs = [one, two] };
        var typed = EditMerge.Snapshot(opened);
        typed.Chairs[0].Name = "Bay";
        typed.Chairs.Add(new Chairs.ChairLine { Name = "New" });

        var change = Assert.Single(EditMerge.MergeChanges(opened, new Chairs.Input { Chairs = [two, one] }, typed));

        Assert.Equal("Order", change.Field.Label);
        Assert.Equal(["Corner", "Bay", "New"], typed.Chairs.Select(c => c.Name));
    }

    [Fact]
    public void Hours_in_a_salon_are_compared_day_by_day()
    {
        var salon = Guid.CreateVersion7();
        var opened = new Staff.Input { Work = [new Staff.SalonWeek { SalonId = salon }] };
        Staff.Input typed = EditMerge.Snapshot(opened),
            saved = EditMerge.Snapshot(opened);
        (typed.Work[0].Days[0].From, typed.Work[0].Days[0].To) = (new LocalTime(9, 0), new LocalTime(12, 0));
        (saved.Work[0].Days[4].From, saved.Work[0].Days[4].To) = (new LocalTime(13, 0), new LocalTime(17, 0));

        var change = Assert.Single(EditMerge.MergeChanges(opened, saved, typed));

        Assert.Equal((salon, false), (change.Of, change.Clashes));
        Assert.Equal([IsoDayOfWeek.Monday, IsoDayOfWeek.Friday], typed.Work[0].Spells().Select(s => s.Day));
    }

    // Each row knows the version it was opened with: a row the other changed must not lose again, whoever's value stands.
    [Fact]
    public void A_row_that_is_kept_knows_the_version_it_is_kept_on()
    {
        var opened = new Factors.Input { Lines = [new() { Percent = 80, Version = 1 }] };
        Factors.Input typed = EditMerge.Snapshot(opened),
            saved = EditMerge.Snapshot(opened);
        typed.Lines[0].Percent = 70;
        (saved.Lines[0].Percent, saved.Lines[0].Version) = (90, 2);

        Assert.True(Assert.Single(EditMerge.MergeChanges(opened, saved, typed)).Clashes);
        Assert.Equal((70, 2u), (typed.Lines[0].Percent, typed.Lines[0].Version));
    }

    private static DaysOffInput Days(int day, string reason) =>
        new()
        {
            Id = Guid.CreateVersion7(),
            From = new LocalDate(2027, 5, day),
            To = new LocalDate(2027, 5, day + 1),
            Reason = reason,
        };
}
