using HairClinic.Domain.Clients;
using HairClinic.Domain.Wear;
using NodaTime;

namespace HairClinic.Domain.Tests.Clients;

/// <summary>What a client's record takes. Common practice, no source.</summary>
public sealed class ClientTests
{
    private static readonly LocalDate Day = new(2027, 2, 3);

    private readonly Client _ada = new(Guid.CreateVersion7(), " C-1 ", " Ada Fenwick ", Guid.CreateVersion7());

    [Theory]
    [InlineData(null, null)]
    [InlineData("", null)]
    [InlineData("  ", null)]
    [InlineData(" Ada ", "Ada")]
    public void What_is_blank_is_nothing_and_what_is_typed_is_kept_without_its_margins(string? typed, string? kept)
    {
        _ada.Rename(" Ada Fenwick-Yarrow ", typed);
        _ada.SetContact(typed, typed);
        _ada.SetBirthDateAndNote(Day, typed);

        Assert.Equal(("C-1", "Ada Fenwick-Yarrow", kept), (_ada.Code, _ada.Name, _ada.CalledAs));
        Assert.Equal((kept, kept, kept, Day), (_ada.Phone, _ada.Email, _ada.Note, _ada.BirthDate));
    }

    [Fact]
    public void A_rhythm_lies_between_a_day_and_eight_weeks()
    {
        foreach (var days in new int?[] { null, 1, 56 })
        {
            _ada.SetPreferences(WeekdaySet.Of(IsoDayOfWeek.Monday), days);
            Assert.Equal(days, _ada.WashEveryDays);
        }
        foreach (var days in new[] { 0, 57 })
            Refused.Saying("A wash-and-style rhythm lies between 1 and 56 days.", () => _ada.SetPreferences(WeekdaySet.Of(), days));
        Assert.Equal((56, WeekdaySet.Of(IsoDayOfWeek.Monday)), (_ada.WashEveryDays, _ada.PreferredDays));
    }

    [Fact]
    public void One_event_is_called_off_and_the_others_stay()
    {
        LifeEvent[] planned = [Event(), Event()];
        foreach (var e in planned)
            _ada.AddLifeEvent(e);

        _ada.RemoveLifeEvent(planned[0].Id);

        Assert.Equal([planned[1]], _ada.Events);
    }

    [Fact]
    public void An_event_ends_on_the_day_it_starts_or_later() =>
        Refused.Saying(
            "The event ends before it starts.",
            () => new LifeEvent(Guid.CreateVersion7(), _ada.Id, LifeEventKind.Travel, Day, Day.PlusDays(-1), away: true)
        );

    [Fact]
    public void A_record_is_folded_once_and_never_into_itself_or_one_that_was_folded()
    {
        var (kept, third) = (Other(), Other());
        Refused.Saying("These are the same record.", () => _ada.MergeInto(_ada));

        _ada.MergeInto(kept);

        Assert.Equal(kept.Id, _ada.MergedIntoId);
        Refused.Saying("One of the two records is merged into another already.", () => _ada.MergeInto(third));
        Refused.Saying("One of the two records is merged into another already.", () => third.MergeInto(_ada));
        _ada.UndoMerge();
        third.MergeInto(_ada);
        Assert.Equal((null, _ada.Id), (_ada.MergedIntoId, third.MergedIntoId));
    }

    private LifeEvent Event() => new(Guid.CreateVersion7(), _ada.Id, LifeEventKind.Celebration, Day, Day, away: false);

    private static Client Other() => new(Guid.CreateVersion7(), "C-2", "Bo Larch", Guid.CreateVersion7());
}
