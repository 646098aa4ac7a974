using HairClinic.Domain.Clients;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Domain.Tests.Clients;

/// <summary>What is written about a client, and what of it is refused. Common practice, no source.</summary>
public sealed class ClientRowTransferTests
{
    private static readonly Instant Now = Instant.FromUtc(2027, 2, 3, 10, 0);
    private static readonly LocalDate Day = new(2027, 2, 3);
    private static readonly Guid Ada = Guid.CreateVersion7();
    private static readonly Guid Salon = Guid.CreateVersion7();
    private static readonly Guid Mara = Guid.CreateVersion7();

    [Fact]
    public void A_grant_ends_after_it_begins_and_says_why()
    {
        Refused.Saying("The last day lies before today.", () => Grant(Now));
        Refused.Saying("The last day lies before today.", () => Grant(Now - Duration.FromDays(1)));
        foreach (var blank in new[] { "", "  " })
            Refused.Saying("Say why the other salon needs to see this client.", () => Grant(Now + Duration.FromDays(1), blank));
        Assert.Equal("On holiday here", Grant(Now + Duration.FromDays(1)).Note);
    }

    [Fact]
    public void A_grant_taken_back_ends_now_one_not_begun_never_begins_and_one_that_is_over_stays_over()
    {
        var (running, ahead, over) = (Grant(Days(9)), Grant(Days(9), from: Days(3)), Grant(Days(1)));

        running.TakeBack(Days(2));
        ahead.TakeBack(Days(2));
        over.TakeBack(Days(2));

        Assert.Equal((Days(2), Days(3), Days(1)), (running.EndsAt!.Value, ahead.EndsAt!.Value, over.EndsAt!.Value));
    }

    [Fact]
    public void Nobody_is_put_off_without_a_day_and_a_reason()
    {
        foreach (var (until, reason) in new (LocalDate?, string?)[] { (null, "away"), (Day, null), (Day, ""), (Day, " "), (null, null) })
            Refused.Saying("Say until when, and why.", () => Note(ContactOutcome.PutOff, until, reason));

        var put = Note(ContactOutcome.PutOff, Day, " away ");
        Assert.Equal((Day, "away"), (put.Until, put.Reason));
        Assert.Null(Note(ContactOutcome.Rang, null, null).Until);
    }

    [Fact]
    public void Times_per_week_lie_between_none_and_fifty()
    {
        foreach (var question in CareHabits.All.Where(q => q.Choices.Count == 0))
        {
            foreach (var times in new[] { -1m, 51m })
                Refused.Saying("Times per week lie between 0 and 50.", () => Fact(question, times));
            foreach (var times in new[] { 0m, 50m })
                Assert.Equal(times, question.AnswerOf(Fact(question, times).Habits));
        }
    }

    [Fact]
    public void Every_habit_is_asked_once_and_bears_on_hold_or_life()
    {
        Assert.Equal(typeof(CareHabits).GetProperties().Select(p => p.Name), CareHabits.All.Select(q => q.Field));
        Assert.All(
            CareHabits.All,
            question =>
            {
                var bears = Answers(question)
                    .Any(a => Enum.GetValues<LifetimeKind>().Any(q => CovariateCatalog.ValuesFromHabits(Habits(question, a), q).Any()));
                Assert.True(bears, $"No row of CovariateCatalog reads {question.Field}.");
            }
        );

        static IEnumerable<object> Answers(CareQuestionDefinition question) => question.Choices.Count == 0 ? [7m] : question.Choices;
    }

    [Fact]
    public void A_merge_is_undone_once()
    {
        var (kept, folded) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        var merge = new ClientMerge(Guid.CreateVersion7(), kept, folded, Now, Mara);
        Assert.Equal((kept, folded, Now, Mara), (merge.KeptId, merge.FoldedId, merge.MergedAt, merge.MergedBy));

        merge.Undo(Days(1));

        Refused.Saying("This merge was undone already.", () => merge.Undo(Days(2)));
        Assert.Equal(Days(1), merge.UndoneAt);
    }

    [Fact]
    public void A_request_is_answered_once()
    {
        var request = new ClientRequest(Guid.CreateVersion7(), Ada, Salon, Mara, Now, " in town ");
        Assert.Equal(
            (Ada, Salon, Mara, Now, "in town"),
            (request.ClientId, request.SalonId, request.AskedBy, request.AskedAt, request.Because)
        );

        request.AnswerAccessRequest(granted: true, Days(1));

        Refused.Saying("Somebody has answered this already.", () => request.AnswerAccessRequest(granted: false, Days(2)));
        Assert.Equal((Days(1), true), (request.AnsweredAt, request.Granted));
    }

    [Fact]
    public void A_photo_is_of_today_or_earlier_and_removed_once()
    {
        Refused.Saying("A photo cannot have been taken later than today.", () => Photo(Day.PlusDays(1)));
        var photo = Photo(Day);
        photo.SetShared(true);

        photo.Remove(Days(1));
        photo.Remove(Days(2));

        Assert.Equal((Days(1), false), (photo.RemovedAt, photo.Shared));
    }

    [Fact]
    public void Letters_are_wished_until_somebody_says_no_and_a_blank_language_is_none()
    {
        var wishes = new ClientPreference(Guid.CreateVersion7(), Ada);
        Assert.Equal((Ada, true, null), (wishes.ClientId, wishes.Letters, wishes.Language));

        wishes.SetLettersAndLanguage(letters: false, "es-ES");
        Assert.Equal((false, "es-ES"), (wishes.Letters, wishes.Language));
        foreach (var blank in new[] { null, "", " " })
        {
            wishes.SetLettersAndLanguage(letters: true, blank);
            Assert.Null(wishes.Language);
        }
    }

    [Fact]
    public void A_feed_ends_once()
    {
        var feed = new CalendarFeed(Guid.CreateVersion7(), Ada, " Ada@Mail.example ", [1], Now);
        Assert.Equal((Ada, "ada@mail.example", Now), (feed.ClientId, feed.Email, feed.MadeAt));

        feed.End(Days(1));
        feed.End(Days(2));

        Assert.Equal(Days(1), feed.EndedAt);
    }

    private static Instant Days(int days) => Now + Duration.FromDays(days);

    private static ClientGrant Grant(Instant until, string because = " On holiday here ", Instant? from = null) =>
        new(Guid.CreateVersion7(), Ada, Salon, from ?? Now, until, Mara, because);

    private static ContactNote Note(ContactOutcome kind, LocalDate? until, string? reason) =>
        new(Guid.CreateVersion7(), Ada, kind, Now, Mara, until, reason);

    private static CareFact Fact(CareQuestionDefinition question, decimal times) =>
        new(Guid.CreateVersion7(), Ada, Day, Habits(question, times));

    private static CareHabits Habits(CareQuestionDefinition question, object answer)
    {
        var habits = new CareHabits();
        question.SetAnswerIn(habits, answer);
        return habits;
    }

    private static Photo Photo(LocalDate takenOn) =>
        new(Guid.CreateVersion7(), Ada, PhotoKind.Before, takenOn, Day, new PhotoFile(Guid.CreateVersion7(), 3, 2, 1), Mara, Now);
}
