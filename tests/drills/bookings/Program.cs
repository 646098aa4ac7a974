using HairClinic.BookingDrill;

var drill = new Settings(
    Writers: Number("--writers", 64, 1, 256),
    Seconds: Number("--seconds", 60, 1, 600),
    Kills: Number("--kills", 0, 0, 100),
    Port: Number("--port", 5873, 1024, 65535)
);
var report = new Report();
var passed = await Drill.RunAsync(drill, report);
if (args.Contains("--save"))
    report.Save(drill);
return passed ? 0 : 1;

int Number(string name, int usual, int least, int most)
{
    var at = Array.IndexOf(args, name);
    return at < 0 ? usual : Math.Clamp(int.Parse(args[at + 1]), least, most);
}
