using System.Diagnostics;
using System.Text.Json;

namespace HairClinic.Web.Tests.CommandLine.Analyse;

/// <summary>The whole program from outside: no book is opened, and nothing but the document is on the way out.</summary>
public sealed class AnalyseProcessTests
{
    [Fact]
    public async Task The_program_prints_one_document_and_nothing_else()
    {
        var (code, output, errors) = await RunAsync(
            "gap --life-shape 7.6 --life-scale 260 --age 60 --lead-mean-log 4.025351691 --lead-sd-log 0.2077 --lead-df 4 --preparation 14"
        );

        Assert.Equal((0, ""), (code, errors));
        Assert.Equal(37, JsonDocument.Parse(output).RootElement.GetProperty("reorderInDays").GetInt32());
    }

    [Fact]
    public async Task What_it_does_not_understand_is_one_line_of_errors()
    {
        var (code, output, errors) = await RunAsync("survival --time t");

        Assert.Equal((2, ""), (code, output));
        Assert.Single(errors.Trim().Split('\n'));
    }

    [Theory]
    [InlineData("gap", "pastSight")]
    [InlineData("gap", "From 0.1 to 1E+300.")]
    [InlineData("remaining", "DAY:shedding,knots,base,fit")]
    [InlineData("survival", "--factor")]
    public async Task Each_verb_says_what_it_reads_and_writes_when_asked_for_help(string verb, string words)
    {
        var (code, output, errors) = await RunAsync($"{verb} --help");

        Assert.Equal((0, ""), (code, errors));
        Assert.Contains(
            words,
            string.Join(' ', output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)),
            StringComparison.Ordinal
        );
    }

    private static async Task<(int Code, string Output, string Errors)> RunAsync(string words)
    {
        var start = new ProcessStartInfo("dotnet", $"\"{Path.Combine(AppContext.BaseDirectory, "HairClinic.Web.dll")}\" analyse {words}")
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = Path.GetTempPath(),
        };
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        var output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, output, await errors);
    }
}
