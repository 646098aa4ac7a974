using System.CommandLine;
using HairClinic.Web.Data;
using HairClinic.Web.Features.Binder;
using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.CommandLine;

/// <summary>export: the book as four CSV files.</summary>
public static class ExportVerb
{
    public static Command Command(Func<ParseResult, string[], Task<WebApplication>> open)
    {
        var folder = new Option<DirectoryInfo>("--out") { Description = "Folder to write to.", Required = true };
        var people = new Option<bool>("--for-people") { Description = "Safe to open in a spreadsheet; not for bringing back." };
        var practice = PracticeOption.Make();
        var command = new Command("export", "Write the book as CSV files: clients, units, bonds, visits.") { folder, people, practice };
        command.SetAction(async result =>
        {
            await using var app = await open(result, []);
            if (await PracticeOption.ChooseAsync(app.Services, result.GetValue(practice)) is not { } id)
                return 2;
            var into = Directory.CreateDirectory(result.GetValue(folder)!.FullName).FullName;
            return await app
                .Services.GetRequiredService<PracticeJobRunner>()
                .RunJobAsync(
                    id,
                    "export",
                    async services =>
                    {
                        await services
                            .GetRequiredService<Export>()
                            .WriteSheetsAsync(
                                SheetKind.All,
                                result.GetValue(people),
                                async (kind, write) =>
                                {
                                    var path = Path.Combine(into, kind.FileName);
                                    await using (var file = File.Create(path))
                                        await write(file);
                                    Console.WriteLine(path);
                                },
                                CancellationToken.None
                            );
                        return 0;
                    }
                );
        });
        return command;
    }
}
