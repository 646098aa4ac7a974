using System.Diagnostics;
using System.Globalization;
using HairClinic.MailDrill;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Tests.Mail;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using SystemClock = NodaTime.SystemClock;
using Way = HairClinic.Web.Tests.Mail.BadMailServer.Way;

// A practice's site beside a mail server that takes letters, hangs, refuses, and drops the line: see README.md of this folder's parent.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
const int Seconds = 30;
const int Letters = 20;
Way[] ways = [Way.Takes, Way.Refuses, Way.DropsAfterData, Way.Hangs];
List<string> said = [];
List<string> broken = [];

var folder = Directory.CreateTempSubdirectory("mail-drill-");

// The database runs as another user where the drill is started by root.
File.SetUnixFileMode(folder.FullName, (UnixFileMode)0b111_101_101);
try
{
    await using var mail = new BadMailServer(Way.Takes);
    await using var practice = await Practice.OpenAsync(folder.FullName, port: 5428, mail.Port, clients: ways.Length * Seconds);
    await practice.SettleAsync();
    var worst = 0.0;
    foreach (var way in ways)
    {
        mail.Does = way;
        var since = SystemClock.Instance.GetCurrentInstant();
        var letters = await AskForLettersAsync(practice, way);
        await LiveAsync(practice);
        await WorkDoneAsync(practice, since);
        var items = await ItemsAsync(practice, since);
        var plans = Waits(items, WorkKind.PlanOrders);
        var rest = Waits(items, WorkKind.RemoveFiles);
        Say($"{way}: plans {Told(plans)}; other work {Told(rest)}; letters {Fates(items.Where(i => letters.Contains(i.Id)))}");
        if (way is Way.Takes)
            worst = rest[^1];
        Hold(plans[plans.Length / 2] <= 5, $"{way}: plans follow within 5 s at the median");
        Hold(rest[^1] <= worst + 1, $"{way}: other work waits at most a second longer than beside a good mail server");
        Hold(way is not (Way.Refuses or Way.DropsAfterData) || Ended(items, letters, way), $"{way}: every letter has its end");
    }

    // Of what hung four are at the end of their tries, and it hangs once more for them; the others go when the server is well.
    var open = await practice.AskAsync(db =>
        db.WorkItems.Where(w => w.Kind == WorkKind.SendMail && w.DoneAt == null).Select(w => w.Id).ToListAsync()
    );
    var last = open.Take(4).ToList();
    await HastenAsync(practice, [.. open.Except(last)], 1, Duration.FromMinutes(10));
    await HastenAsync(practice, last, WorkItem.MostAttempts - 1, Duration.Zero);
    await UntilAsync(practice, last);
    mail.Does = Way.Takes;
    await HastenAsync(practice, [.. open.Except(last)], 1, Duration.Zero);
    await UntilAsync(practice, open);
    Hold(open.Count > last.Count, "letters hang beside a server that hangs");
    var ended = await practice.AskAsync(db => db.WorkItems.AsNoTracking().Where(w => open.Contains(w.Id)).ToListAsync());
    Say($"of {open.Count} that hung: {Fates(ended)}");
    Hold(ended.Where(w => last.Contains(w.Id)).All(w => w.Fate == WorkOutcome.GivenUp), "a letter tried to its end is given up");
    Hold(ended.Where(w => !last.Contains(w.Id)).All(w => w.Fate is null), "a letter that hung goes when the server is well");
    var twice = mail.Ids.CountBy(i => i).Count(i => i.Value > 1);
    Say($"{mail.Ids.Count} letters were heard to their end, {twice} of them more than once");
    Hold(twice == 0, "no letter is heard twice");
    Hold(await practice.AskAsync(db => db.WorkItems.AllAsync(w => w.DoneAt != null)), "nothing is left open");
}
finally
{
    folder.Delete(recursive: true);
}
foreach (var what in broken)
    Say($"does not hold: {what}");
Say(broken.Count == 0 ? "PASS" : "FAIL");
if (args is ["--save"])
    await File.WriteAllLinesAsync(
        Path.Combine(Here(), "results", $"{SystemClock.Instance.GetCurrentInstant().InUtc().Date:uuuu-MM-dd}.txt"),
        said
    );
return broken.Count == 0 ? 0 : 1;

static string Here([System.Runtime.CompilerServices.CallerFilePath] string file = "") => Path.GetDirectoryName(file)!;

void Say(string line)
{
    said.Add(line);
    Console.WriteLine(line);
}

void Hold(bool holds, string what)
{
    if (!holds)
        broken.Add(what);
}

static Task<HashSet<Guid>> AskForLettersAsync(Practice practice, Way way) =>
    practice.AskAsync(async db =>
    {
        var now = SystemClock.Instance.GetCurrentInstant();
        var items = Enumerable
            .Range(0, Letters)
            .Select(i =>
                WorkItemFactory.SendLetter(new($"{way}{i}@example.test".ToLowerInvariant(), "Your dates", "Thursday at ten."), now)
            )
            .ToList();
        db.WorkItems.AddRange(items);
        await db.SaveChangesAsync();
        return items.Select(i => i.Id).ToHashSet();
    });

// A rebond a second, and beside it a piece of other work.
static async Task LiveAsync(Practice practice)
{
    var clock = Stopwatch.StartNew();
    for (var second = 0; second < Seconds; second++)
    {
        await practice.RebondAsync();
        await practice.AskAsync(async db =>
        {
            db.WorkItems.Add(WorkItemFactory.RemoveFiles([], SystemClock.Instance.GetCurrentInstant()));
            return await db.SaveChangesAsync();
        });
        var rest = TimeSpan.FromSeconds(second + 1) - clock.Elapsed;
        if (rest > TimeSpan.Zero)
            await Task.Delay(rest);
    }
}

static Task<List<WorkItem>> ItemsAsync(Practice practice, Instant since) =>
    practice.AskAsync(db => db.WorkItems.AsNoTracking().Where(w => w.AskedAt >= since).ToListAsync());

static async Task WorkDoneAsync(Practice practice, Instant since)
{
    for (var waited = 0; waited < 600; waited++, await Task.Delay(100))
    {
        if ((await ItemsAsync(practice, since)).All(w => w.Kind == WorkKind.SendMail || w.DoneAt is not null))
            return;
    }
}

static async Task UntilAsync(Practice practice, List<Guid> items)
{
    for (var waited = 0; waited < 2400; waited++, await Task.Delay(100))
    {
        if (await practice.AskAsync(db => db.WorkItems.AllAsync(w => !items.Contains(w.Id) || w.DoneAt != null)))
            return;
    }
}

static Task<int> HastenAsync(Practice practice, List<Guid> items, int attempts, Duration wait) =>
    practice.AskAsync(db =>
        db.WorkItems.Where(w => items.Contains(w.Id))
            .ExecuteUpdateAsync(set =>
                set.SetProperty(w => w.NotBefore, SystemClock.Instance.GetCurrentInstant() + wait).SetProperty(w => w.Attempts, attempts)
            )
    );

static double[] Waits(IEnumerable<WorkItem> items, WorkKind kind) =>
    [
        .. items
            .Where(i => i.Kind == kind)
            .Select(i => i.DoneAt is { } done ? (done - i.AskedAt).TotalSeconds : double.PositiveInfinity)
            .Order(),
    ];

static string Told(double[] waits) =>
    $"{waits.Length}, median {waits[waits.Length / 2]:0.0} s, p95 {waits[(int)(waits.Length * 0.95)]:0.0} s, longest {waits[^1]:0.0} s";

static string Fates(IEnumerable<WorkItem> items) =>
    string.Join(
        ", ",
        items
            .CountBy(i =>
                i.DoneAt is null ? $"waiting after {i.Attempts}"
                : i.Fate is { } fate ? $"{fate} ({i.LastError})"
                : "gone"
            )
            .OrderBy(f => f.Key)
            .Select(f => $"{f.Value} {f.Key}")
    );

static bool Ended(IEnumerable<WorkItem> items, HashSet<Guid> letters, Way way) =>
    items
        .Where(i => letters.Contains(i.Id))
        .All(i => i.Fate == (way is Way.Refuses ? WorkOutcome.GivenUp : WorkOutcome.Unsure) && i.Attempts == 0);
