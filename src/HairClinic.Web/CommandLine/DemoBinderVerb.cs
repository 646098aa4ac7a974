using System.CommandLine;
using HairClinic.Web.Demo;
using NodaTime.Text;

namespace HairClinic.Web.CommandLine;

/// <summary>demo: write the invented practice's binder as CSV files, to try an import with.</summary>
public static class DemoBinderVerb
{
    public static Command Command()
    {
        var folder = new Option<DirectoryInfo>("--write-binder")
        {
            Description = "Folder to write clients, units, bonds and visits to.",
            Required = true,
        };
        var today = new Option<string>("--today") { Description = "The day the binder is as of, such as 2027-02-03.", Required = true };
        today.Validators.Add(result =>
        {
            if (!LocalDatePattern.Iso.Parse(result.GetValueOrDefault<string>() ?? "").Success)
                result.AddError("--today is a day written year, month, day, such as 2027-02-03.");
        });
        var command = new Command("demo", "Write the invented practice's binder as CSV files.") { folder, today };
        command.SetAction(async result =>
        {
            var into = Directory.CreateDirectory(result.GetValue(folder)!.FullName).FullName;
            foreach (var (kind, file) in DemoBinder.GenerateCsv(LocalDatePattern.Iso.Parse(result.GetValue(today)!).Value))
            {
                var path = Path.Combine(into, kind.FileName);
                await File.WriteAllBytesAsync(path, file);
                Console.WriteLine(path);
            }
            return 0;
        });
        return command;
    }
}
