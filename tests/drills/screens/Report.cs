using System.Runtime.CompilerServices;

namespace HairClinic.ScreenDrill;

/// <summary>What the drill says, on the screen and, when asked, in a dated file beside it.</summary>
internal sealed class Report(string drill)
{
    private readonly List<string> _lines = [];

    public void Say(string line)
    {
        _lines.Add(line);
        Console.WriteLine(line);
    }

    public void Save([CallerFilePath] string here = "")
    {
        var file = Path.Combine(Path.GetDirectoryName(here)!, "results", $"{TimeProvider.System.GetLocalNow():yyyy-MM-dd}-{drill}.txt");
        File.WriteAllLines(file, _lines);
    }
}
