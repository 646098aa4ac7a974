using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using NodaTime;
using NodaTime.Text;

namespace HairClinic.Benchmarks;

/// <summary>What a benchmark found: printed at once, and kept as a dated text when asked.</summary>
public sealed class Report(string name, IReadOnlyList<string> options)
{
    private readonly StringBuilder _text = new();
    private readonly LocalDate _today = SystemClock.Instance.GetCurrentInstant().InUtc().Date;

    /// <summary>Beside the benchmarks, in the source.</summary>
    public static string Folder { get; } = Path.Combine(Path.GetDirectoryName(Here())!, "results");

    /// <summary>A number given as "--name number".</summary>
    public int Option(string option, int otherwise) => Word(option) is { } word ? int.Parse(word, CultureInfo.InvariantCulture) : otherwise;

    /// <summary>A word given as "--name word"; null where it is not.</summary>
    public string? Word(string option)
    {
        for (var i = 0; i < options.Count - 1; i++)
        {
            if (options[i] == $"--{option}")
                return options[i + 1];
        }
        return null;
    }

    public void Say(string line = "")
    {
        Console.WriteLine(line);
        _text.AppendLine(line);
    }

    /// <summary>How busy the machine is: figures of a busy one are slow, their ratios still hold.</summary>
    public void SayLoad()
    {
        if (File.Exists("/proc/loadavg"))
            Say($"{Environment.ProcessorCount} cores, load {string.Join(' ', File.ReadAllText("/proc/loadavg").Split(' ').Take(3))}");
    }

    /// <summary>Under the benchmark's name, or another given as "--label name".</summary>
    public void Save()
    {
        Directory.CreateDirectory(Folder);
        File.WriteAllText(Path.Combine(Folder, $"{LocalDatePattern.Iso.Format(_today)}-{Word("label") ?? name}.txt"), _text.ToString());
    }

    private static string Here([CallerFilePath] string path = "") => path;
}
