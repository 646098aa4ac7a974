using System.CommandLine;
using HairClinic.Web.AccessLog;
using HairClinic.Web.Data;

namespace HairClinic.Web.CommandLine;

/// <summary>verify-log: is the access log whole?</summary>
public static class VerifyLogVerb
{
    public static Command Command(Func<ParseResult, string[], Task<WebApplication>> open)
    {
        var practice = new Option<Guid?>("--practice") { Description = "Id of one practice; without it all are walked." };
        var written = new Option<string?>("--head")
        {
            Description = "A head written down earlier, NUMBER:HASH; it must still be in the log.",
        };
        written.Validators.Add(result =>
        {
            if (Read(result.GetValueOrDefault<string>()) is null)
                result.AddError("--head is a number, a colon and 64 hexadecimal digits, as this verb prints them.");
        });
        var command = new Command("verify-log", "Walk the access log and say whether every line is there and unchanged.")
        {
            practice,
            written,
        };
        command.SetAction(async result =>
        {
            await using var app = await open(result, []);
            var head = Read(result.GetValue(written));
            IReadOnlyList<Guid> practices;
            if (result.GetValue(practice) is not null || head is not null)
            {
                if (await PracticeOption.ChooseAsync(app.Services, result.GetValue(practice)) is not { } id)
                    return 2;
                practices = [id];
            }
            else
            {
                practices = await app.Services.GetRequiredService<PracticeJobRunner>().PracticeIdsAsync(CancellationToken.None);
            }
            var whole = true;
            foreach (var id in practices)
            {
                var walked = await app.Services.GetRequiredService<AccessLogCheck>().WalkAsync(id, head, CancellationToken.None);
                Write(id, walked, head);
                whole &= walked.Whole;
            }
            return whole ? 0 : 1;
        });
        return command;
    }

    private static void Write(Guid practice, AccessLogCheck.Outcome walked, AccessLogCheck.Head? written)
    {
        if (walked.Broken is { } number)
            Console.WriteLine(Line($"{practice}: line {number} does not fit or is not there; the lines before it are whole."));
        else if (walked.MissesHead)
            Console.WriteLine(
                Line(
                    $"{practice}: {walked.Last.Number} entries fit together, but line {written!.Number} is not the one written down: the log was cut short or made anew."
                )
            );
        else
            Console.WriteLine(Line($"{practice}: {walked.Last.Number} entries, whole"));
        Console.WriteLine(Line($"  head {walked.Last}"));
    }

    private static AccessLogCheck.Head? Read(string? text)
    {
        if (
            text?.Split(':') is not [var number, var hash]
            || !long.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var line)
            || hash.Length != 64
            || !hash.All(char.IsAsciiHexDigit)
        )
            return null;
        return new(line, Convert.FromHexString(hash));
    }

    private static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
