using HairClinic.Web.Data.Work;
using HairClinic.Web.Mail;
using HairClinic.Web.Workers;
using MailKit.Net.Smtp;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging;
using MimeKit;
using NodaTime;

namespace HairClinic.Web.Tests.Workers;

public sealed class PracticeWorkRunnerTests(PgServer server)
{
    private readonly Letterbox _box = new();

    [Fact]
    public async Task A_letter_is_sent_once_and_its_words_are_then_forgotten()
    {
        await using var clinic = await AskingForAsync(Letter(1));

        await Letterbox.WorkAsync(clinic, _box);
        await Letterbox.WorkAsync(clinic, _box);

        Assert.Equal([Letter(1)], _box.Sent);
        var item = Assert.Single(await Letterbox.ItemsAsync(clinic));
        Assert.Equal((TestClinic.UsualNow, "{}", 0), (item.DoneAt!.Value, item.Body, item.Attempts));
    }

    [Fact]
    public async Task Two_workers_at_once_send_each_letter_once()
    {
        await using var clinic = await AskingForAsync([.. Enumerable.Range(0, 40).Select(Letter)]);
        _box.Before = _ => Task.Delay(5, TestContext.Current.CancellationToken);

        var tried = await Task.WhenAll(Letterbox.WorkAsync(clinic, _box), Letterbox.WorkAsync(clinic, _box));

        Assert.Equal(40, tried.Sum());
        Assert.All(tried, share => Assert.NotEqual(0, share));
        Assert.Equal(Enumerable.Range(0, 40).Select(Letter).OrderBy(l => l.To), _box.Sent.OrderBy(l => l.To));
    }

    [Fact]
    public async Task What_fails_does_not_hold_up_the_rest_and_is_tried_again_after_ever_longer_waits()
    {
        await using var clinic = await AskingForAsync(Letter(1), Letter(2));
        _box.Before = letter => letter == Letter(1) ? throw new IOException("refused") : Task.CompletedTask;
        List<double> waits = [];

        for (var attempt = 1; attempt <= 11; attempt++)
        {
            await Letterbox.WorkAsync(clinic, _box);
            var failed = (await Letterbox.ItemsAsync(clinic)).Single(i => i.DoneAt is null);
            Assert.Equal((attempt, nameof(IOException)), (failed.Attempts, failed.LastError));
            waits.Add((failed.NotBefore - clinic.Clock.GetCurrentInstant()).TotalSeconds);
            clinic.Clock.Reset(failed.NotBefore - Duration.FromMilliseconds(1));
            Assert.Equal(0, await Letterbox.WorkAsync(clinic, _box));
            clinic.Clock.Reset(failed.NotBefore);
        }
        Assert.Equal([Letter(2)], _box.Sent);
        Assert.Equal([10, 20, 40, 80, 160, 320, 640, 1280, 2560, 2560, 2560], waits);

        _box.Before = _ => Task.CompletedTask;
        await Letterbox.WorkAsync(clinic, _box);
        Assert.Equal([Letter(2), Letter(1)], _box.Sent);
    }

    [Fact]
    public async Task A_worker_that_dies_in_the_middle_leaves_the_letter_to_the_next()
    {
        await using var clinic = await AskingForAsync(Letter(1));
        using var dying = new CancellationTokenSource();
        _box.Before = _ => dying.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => Letterbox.WorkAsync(clinic, _box, cancellation: dying.Token));

        var left = Assert.Single(await Letterbox.ItemsAsync(clinic));
        Assert.Equal((null, 0), (left.DoneAt, left.Attempts));
        _box.Before = _ => Task.CompletedTask;
        await Letterbox.WorkAsync(clinic, _box);
        Assert.Equal([Letter(1)], _box.Sent);
    }

    [Fact]
    public async Task An_item_in_one_workers_hands_is_passed_over_by_the_other_not_waited_for()
    {
        await using var clinic = await AskingForAsync(Letter(1));
        TaskCompletionSource inHand = new(),
            letGo = new();
        _box.Before = async _ =>
        {
            inHand.SetResult();
            await letGo.Task;
        };

        var first = Letterbox.WorkAsync(clinic, _box);
        await inHand.Task;
        Assert.Equal(0, await Letterbox.WorkAsync(clinic, new Letterbox()));
        letGo.SetResult();

        Assert.Equal(1, await first);
    }

    [Fact]
    public async Task A_stop_that_nobody_asked_for_is_a_failure_like_others()
    {
        await using var clinic = await AskingForAsync(Letter(1));
        _box.Before = _ => throw new TaskCanceledException("The server took too long.");

        Assert.Equal(1, await Letterbox.WorkAsync(clinic, _box));

        Assert.Equal(nameof(TaskCanceledException), Assert.Single(await Letterbox.ItemsAsync(clinic)).LastError);
    }

    [Fact]
    public async Task Neither_the_log_nor_the_item_says_who_a_letter_was_for()
    {
        await using var clinic = await AskingForAsync(Letter(1));
        var address = Letter(1).To;
        _box.Before = _ =>
            throw new SmtpCommandException(
                SmtpErrorCode.RecipientNotAccepted,
                SmtpStatusCode.MailboxUnavailable,
                MailboxAddress.Parse(address),
                $"<{address}>: no such user"
            );
        var log = new KeptLog<LetterSender>();

        await Letterbox.WorkAsync(clinic, _box, log);

        var line = Assert.Single(log.Lines);
        Assert.Contains("SendMail", line, StringComparison.Ordinal);
        Assert.Contains("550", line, StringComparison.Ordinal);
        Assert.DoesNotContain("example", line, StringComparison.Ordinal);
        Assert.DoesNotContain("Thursday", line, StringComparison.Ordinal);
        Assert.Equal("SmtpCommandException 550", Assert.Single(await Letterbox.ItemsAsync(clinic)).LastError);
    }

    [Fact]
    public async Task A_letter_that_fails_all_day_is_given_up_and_only_its_envelope_stays()
    {
        var client = Guid.CreateVersion7();
        await using var clinic = await AskingForAsync(Letter(1) with { Kind = LetterKind.ConfirmAddress, For = client });
        _box.Before = _ => throw new IOException("away");
        var since = clinic.Clock.GetCurrentInstant();

        WorkItem item;
        while ((item = Assert.Single(await Letterbox.ItemsAsync(clinic))).DoneAt is null)
        {
            clinic.Clock.Reset(Instant.Max(item.NotBefore, since));
            Assert.Equal(1, await Letterbox.WorkAsync(clinic, _box));
        }

        Assert.Equal((WorkOutcome.GivenUp, nameof(IOException), WorkItem.MostAttempts), (item.Fate, item.LastError, item.Attempts));
        Assert.InRange(item.DoneAt.Value - since, Duration.FromHours(20), Duration.FromHours(28));
        Assert.Equal(new Letter("", "", "") { Kind = LetterKind.ConfirmAddress, For = client }, WorkItemFactory.ReadBody<Letter>(item));
        clinic.Clock.AdvanceDays(30);
        Assert.Equal(0, await Letterbox.WorkAsync(clinic, _box));
    }

    [Fact]
    public async Task A_link_is_tried_only_for_its_life_and_never_sent_after()
    {
        var until = TestClinic.UsualNow + Duration.FromMinutes(15);
        await using var clinic = await AskingForAsync(Letter(1) with { Until = until }, Letter(2) with { Until = until });
        _box.Before = letter => letter.To == Letter(1).To ? throw new IOException("away") : Task.CompletedTask;
        var tries = 0;
        for (var minute = 0; minute < 20; minute++, clinic.Clock.AdvanceMinutes(1))
            tries += await Letterbox.WorkAsync(clinic, _box);

        var item = (await Letterbox.ItemsAsync(clinic)).Single(i => i.Attempts > 0);
        Assert.Equal(WorkOutcome.GivenUp, item.Fate);
        Assert.InRange(item.DoneAt!.Value, TestClinic.UsualNow, until);
        Assert.InRange(tries, 4, 9);

        await using var late = await AskingForAsync(Letter(3) with { Until = TestClinic.UsualNow });
        Assert.Equal(1, await Letterbox.WorkAsync(late, _box));
        Assert.Equal(WorkFaults.TooLate, Assert.Single(await Letterbox.ItemsAsync(late)).LastError);
        Assert.Equal([Letter(2).To], _box.Sent.Select(l => l.To));
    }

    [Fact]
    public async Task A_letter_whose_worker_was_killed_is_taken_up_again_unless_it_was_being_handed_over()
    {
        await using var clinic = await AskingForAsync(Letter(1), Letter(2));
        var killedAt = clinic.Clock.GetCurrentInstant();
        await clinic.ReadAsync(async db =>
        {
            var items = await db.WorkItems.OrderBy(i => i.Id).ToListAsync(TestContext.Current.CancellationToken);
            items.ForEach(i => i.Claim(killedAt + Duration.FromMinutes(1)));
            items.Single(i => WorkItemFactory.ReadBody<Letter>(i) == Letter(2)).BeginDelivery(killedAt);
            return await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        });

        Assert.Equal(0, await Letterbox.WorkAsync(clinic, _box));
        clinic.Clock.AdvanceMinutes(1);
        Assert.Equal(2, await Letterbox.WorkAsync(clinic, _box));

        Assert.Equal([Letter(1)], _box.Sent);
        var unsure = (await Letterbox.ItemsAsync(clinic)).Single(i => i.Fate is not null);
        Assert.Equal((WorkOutcome.Unsure, WorkFaults.Interrupted), (unsure.Fate, unsure.LastError));
    }

    [Fact]
    public async Task No_transaction_is_open_while_the_mail_server_is_talked_to()
    {
        await using var clinic = await AskingForAsync(Letter(1));
        string? lockedOut = "not tried";
        _box.Before = async _ =>
            lockedOut = await clinic.ReadAsync(db =>
                db.Database.SqlQuery<string?>($"select id::text as \"Value\" from work_items for update nowait")
                    .SingleAsync(TestContext.Current.CancellationToken)
            );

        await Letterbox.WorkAsync(clinic, _box);

        Assert.Equal(Assert.Single(await Letterbox.ItemsAsync(clinic)).Id.ToString(), lockedOut);
        Assert.Single(_box.Sent);
    }

    private async Task<TestClinic> AskingForAsync(params Letter[] letters) =>
        await TestClinic.OpenAsync(
            server,
            scene => scene.Db.WorkItems.AddRange(letters.Select(letter => WorkItemFactory.SendLetter(letter, scene.Now)))
        );

    private static Letter Letter(int number) => new($"reader{number:00}@example.test", "Your appointment", $"Thursday at ten. {number}");
}
