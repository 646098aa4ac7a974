using System.Runtime.CompilerServices;
using System.Text;
using NodaTime;
using NodaTime.Text;

namespace HairClinic.BookingDrill;

/// <summary>What the drill says: printed at once, and kept as a dated text when asked.</summary>
internal sealed class Report
{
    private readonly StringBuilder _text = new();
    private readonly Lock _printing = new();

    public void Say(string line)
    {
        lock (_printing)
        {
            _text.AppendLine(line);
            Console.WriteLine(line);
        }
    }

    public void Save(Settings settings)
    {
        var day = LocalDatePattern.Iso.Format(SystemClock.Instance.GetCurrentInstant().InUtc().Date);
        var name = settings.Kills > 0 ? $"{day}-kills-{settings.Kills}.txt" : $"{day}-load-{settings.Writers}x{settings.Seconds}.txt";
        File.WriteAllText(Path.Combine(Folder(), name), _text.ToString());
    }

    private static string Folder([CallerFilePath] string here = "") =>
        Directory.CreateDirectory(Path.Combine(Path.GetDirectoryName(here)!, "results")).FullName;
}
