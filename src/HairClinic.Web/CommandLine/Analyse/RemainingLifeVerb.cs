using System.CommandLine;

namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>analyse remaining: how much longer does a unit of that age last?</summary>
public static class RemainingLifeVerb
{
    private const string Help =
        "How much longer a unit of that age lasts, as JSON: the distribution, given that it has lasted so long. What is known of its life is "
        + "said in one of three ways: --location and --scale (as analyse survival prints them), --life-shape and --life-scale, or --low and --high.";

    public static Command Command()
    {
        var life = new LifeOptions();
        var age = new NumberOption("--age", "Worn days until today.", 0, 1e9, required: true);
        var at = Several("--at", "Worn days from today of which the chance to last them is printed, separated by commas.");
        var file = new Option<string?>("--grades")
        {
            Description =
                "A CSV file of its take-downs with the columns day (worn days until then), shedding, knots, base and fit: 0 to 4, empty where nobody looked.",
        };
        var grade = Several("--grade", "One take-down as DAY:shedding,knots,base,fit, as in 120:1,0,2,1; empty where nobody looked.");
        var command = new Command("remaining", Help) { age.Option, at, file, grade };
        foreach (var option in life.All)
            command.Options.Add(option);
        command.SetAction(result =>
            AnalyseOutput.RunAndWrite(
                result.InvocationConfiguration,
                () =>
                {
                    var worn = age.Number(result);
                    var days = result
                        .GetValue(at)!
                        .SelectMany(words => words.Split(','))
                        .Select(word => NumberOption.Parse(at.Name, word, 0, 1e9))
                        .ToList();
                    var grades = GradeInput.Read(result.GetValue(file), result.GetValue(grade)!, worn);
                    return RemainingLifeJsonBuilder.FromAnswer(RemainingLifeAnswer.Of(life.Read(result), worn, grades), days);
                }
            )
        );
        return command;
    }

    private static Option<string[]> Several(string name, string description) =>
        new(name) { Description = description + " May be said more than once.", DefaultValueFactory = _ => [] };
}
