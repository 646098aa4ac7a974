using System.CommandLine;
using HairClinic.Web.Data;
using HairClinic.Web.Features.Binder;
using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.CommandLine;

/// <summary>import: a practice's own rows, looked at first and brought only with --confirm.</summary>
public static class ImportVerb
{
    public static Command Command(Func<ParseResult, string[], Task<WebApplication>> open)
    {
        var files = SheetKind
            .All.Select(kind => new Option<FileInfo?>("--" + kind.Name) { Description = $"CSV file of {kind.Name}." })
            .ToArray();
        var dates = new Option<string?>("--date-order")
        {
            Description = "How dates that end in a year are read, when the file leaves it open: dmy, mdy or ymd.",
        };
        dates.AcceptOnlyFromAmong("dmy", "mdy", "ymd");
        var mark = new Option<string?>("--decimal-mark")
        {
            Description = "What stands before a fraction, when the file leaves it open: point or comma.",
        };
        mark.AcceptOnlyFromAmong("point", "comma");
        var confirm = new Option<bool>("--confirm") { Description = "Bring them. Without it nothing is written." };
        var create = new Option<bool>("--create-missing")
        {
            Description = "Create workshops, bases, products, services, stylists and chairs that the book does not have.",
        };
        var practice = PracticeOption.Make();
        var command = new Command("import", "Bring a practice's own rows: clients, units, bonds, visits.")
        {
            dates,
            mark,
            confirm,
            create,
            practice,
        };
        foreach (var file in files)
            command.Options.Add(file);
        command.SetAction(async result =>
        {
            await using var app = await open(result, []);
            if (await PracticeOption.ChooseAsync(app.Services, result.GetValue(practice)) is not { } id)
                return 2;
            var given = SheetKind
                .All.Zip(files, (kind, file) => (Kind: kind, File: result.GetValue(file)))
                .Where(g => g.File is not null)
                .ToList();
            if (given.Count == 0)
            {
                await Console.Error.WriteLineAsync("Name at least one file: --clients, --units, --bonds or --visits.");
                return 2;
            }
            return await app
                .Services.GetRequiredService<PracticeJobRunner>()
                .RunJobAsync(
                    id,
                    "import",
                    async services =>
                    {
                        var screen = await services.GetRequiredService<Import>().OpenAsync(CancellationToken.None);
                        var drafts = new List<SheetDraft>();
                        foreach (var (kind, file) in given)
                        {
                            var (draft, problem) = SheetDraft.FromFile(
                                kind,
                                await File.ReadAllBytesAsync(file!.FullName),
                                screen.Region,
                                screen.Currency
                            );
                            if (draft is null)
                            {
                                await Console.Error.WriteLineAsync($"{file.Name}: {problem!.Sentence}");
                                return 2;
                            }
                            draft = draft with
                            {
                                ChosenDates = draft.AsksDates ? Order(result.GetValue(dates)) : null,
                                ChosenMark = draft.AsksMark ? Mark(result.GetValue(mark)) : null,
                            };
                            ImportPreviewWriter.WriteMapping(Console.Out, file.Name, draft);
                            if (draft.Order is null)
                            {
                                ImportPreviewWriter.WriteQuestions(Console.Error, file.Name, draft);
                                return 2;
                            }
                            drafts.Add(draft);
                        }
                        return await RunAsync(
                            services.GetRequiredService<ImportBinder>(),
                            drafts,
                            result.GetValue(create),
                            result.GetValue(confirm)
                        );
                    }
                );
        });
        return command;
    }

    private static async Task<int> RunAsync(ImportBinder binder, List<SheetDraft> drafts, bool create, bool confirm)
    {
        var reports = await binder.RehearseAsync(drafts, CancellationToken.None);
        foreach (var report in reports)
            ImportPreviewWriter.WriteReport(Console.Out, Console.Error, report, create);
        if (reports.Any(r => r.Problems.Count > 0) || (!create && reports.Any(r => r.Missing.Count > 0)))
        {
            await Console.Error.WriteLineAsync("Nothing was written.");
            return 2;
        }
        if (!confirm)
        {
            Console.WriteLine("Nothing was written. Say --confirm to bring these rows.");
            return 0;
        }
        try
        {
            foreach (var outcome in await binder.SaveAsync(drafts, create, CancellationToken.None))
                Console.WriteLine(
                    $"{outcome.Sheet}: brought, {outcome.New} new, {outcome.Changed} changed, {outcome.Unchanged} unchanged."
                );
            return 0;
        }
        catch (Refusal refusal)
        {
            await Console.Error.WriteLineAsync(refusal.Message);
            return 2;
        }
    }

    private static DateOrder? Order(string? word) =>
        word switch
        {
            "dmy" => DateOrder.DayMonthYear,
            "mdy" => DateOrder.MonthDayYear,
            "ymd" => DateOrder.YearMonthDay,
            _ => null,
        };

    private static DecimalMark? Mark(string? word) =>
        word switch
        {
            "point" => DecimalMark.Point,
            "comma" => DecimalMark.Comma,
            _ => null,
        };
}
