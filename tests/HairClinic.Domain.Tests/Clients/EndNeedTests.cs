using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using NodaTime;

namespace HairClinic.Domain.Tests.Clients;

/// <summary>When a client's need may end, and what follows from why. Common practice, no source.</summary>
public sealed class EndNeedTests
{
    private static readonly LocalDate Today = new(2027, 2, 3);
    private static readonly NeedEndFacts Free = new(Today, WearsBond: false, LastOffOn: Today.PlusDays(-5), Borrowed: null);

    private readonly Client _ada = new(Guid.CreateVersion7(), "C-1", "Ada Fenwick", Guid.CreateVersion7());

    [Fact]
    public void From_that_day_on_they_have_left_and_the_book_says_why()
    {
        _ada.EndNeed(Today.PlusDays(-5), NeedEnd.HairReturned, Free);

        Assert.Equal((Today.PlusDays(-5), NeedEnd.HairReturned, true), (_ada.LeftOn!.Value, _ada.NeedEndedBecause, _ada.HasLeft));
        Refused.Saying("This client has needed no units since {0}. If they are back, say so on their card first.", _ada.RequireNeed);
    }

    [Fact]
    public void Whoever_never_wore_a_unit_can_end_it_on_any_day_that_has_come()
    {
        _ada.EndNeed(Today.PlusYears(-1), NeedEnd.Other, Free with { LastOffOn = null });

        Assert.Equal(Today.PlusYears(-1), _ada.LeftOn);
    }

    [Fact]
    public void What_is_on_their_head_or_lent_to_them_comes_first_and_the_day_has_come_and_is_not_one_on_which_they_wore_hair()
    {
        Says("A unit is still on their head. Ask a stylist to log the take-down first.", Today, Free with { WearsBond = true });
        Says("Unit {0} is lent to them: it has to be back first.", Today, Free with { Borrowed = "S-1" });
        Says("{0} is in the future: choose today or earlier.", Today.PlusDays(1), Free);
        Says("A unit was on their head until {0}: their need cannot have ended before.", Today.PlusDays(-6), Free);

        Assert.Equal((null, null), (_ada.LeftOn, _ada.NeedEndedBecause));
        _ada.RequireNeed();
    }

    // Nobody asks a family for a visit.
    [Fact]
    public void Of_somebody_who_died_nothing_comes_off_or_back_first()
    {
        _ada.EndNeed(Today, NeedEnd.Died, Free with { WearsBond = true, Borrowed = "S-1" });

        Assert.Equal(NeedEnd.Died, _ada.NeedEndedBecause);
    }

    [Fact]
    public void It_ends_once_and_whoever_is_back_is_a_client_again()
    {
        Refused.Saying("They are a client already.", _ada.Return);
        _ada.EndNeed(Today, NeedEnd.MovedAway, Free);
        Says("Their need ended on {0} already.", Today, Free);

        _ada.Return();

        Assert.Equal((null, null), (_ada.LeftOn, _ada.NeedEndedBecause));
        _ada.EndNeed(Today, NeedEnd.TryingWithout, Free);
    }

    [Fact]
    public void Only_whoever_tries_without_keeps_their_own_page_and_who_died_or_moved_away_comes_to_no_visit()
    {
        Assert.Equal([NeedEnd.TryingWithout], Enum.GetValues<NeedEnd>().Where(b => b.KeepsOwnPage()));
        Assert.Equal([NeedEnd.MovedAway, NeedEnd.Died], Enum.GetValues<NeedEnd>().Where(b => b.CallsOffVisits()));
    }

    private void Says(string sentence, LocalDate on, NeedEndFacts facts) =>
        Refused.Saying(sentence, () => _ada.EndNeed(on, NeedEnd.Other, facts));
}
