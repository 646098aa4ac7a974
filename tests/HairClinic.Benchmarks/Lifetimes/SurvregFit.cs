using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.Lifetimes;

/// <summary>The same fit by survreg of R's survival package, where Rscript is on the path.</summary>
/// <param name="Seconds">Wall time of each call of survreg, its model frame included; reading the rows is not.</param>
/// <param name="Processor">As much of the processor's time.</param>
/// <param name="Parameters">The coefficients, then the logarithm of the scale.</param>
internal sealed record SurvregFit(string Version, double[] Seconds, double[] Processor, double[] Parameters)
{
    private const string Script = """
        suppressPackageStartupMessages(library(survival))
        a <- commandArgs(TRUE); n <- as.integer(a[2]); p <- as.integer(a[3])
        f <- file(a[1], "rb"); d <- as.data.frame(matrix(readBin(f, "double", n * (p + 2)), n)); close(f)
        names(d) <- c("time", "status", paste0("x", seq_len(p)))
        for (i in 1:as.integer(a[4])) {
          gc()
          s <- proc.time()
          m <- survreg(Surv(time, status) ~ ., data = d, dist = a[5])
          s <- proc.time() - s
          cat("seconds", s[["elapsed"]], "\n")
          cat("processor", s[["user.self"]] + s[["sys.self"]], "\n")
        }
        cat("parameters", sprintf("%.17g", c(coef(m), log(m$scale))), "\n")
        cat("version R", as.character(getRversion()), "survival", as.character(packageVersion("survival")), "\n")
        """;

    /// <returns>Null where there is no Rscript.</returns>
    public static async Task<SurvregFit?> RunAsync(LifeDistribution distribution, Spell[] spells, CovariateColumn[] columns, int times)
    {
        var folder = Directory.CreateTempSubdirectory("survreg");
        try
        {
            var (rows, script) = (Path.Combine(folder.FullName, "rows"), Path.Combine(folder.FullName, "fit.R"));
            await File.WriteAllTextAsync(script, Script);
            await using (var file = File.Create(rows))
            {
                Write(file, [.. spells.Select(spell => spell.Lower)]);
                Write(file, [.. spells.Select(spell => spell.End == SpellEnd.At ? 1.0 : 0)]);
                foreach (var column in columns)
                    Write(file, column.Values);
            }
            var start = new ProcessStartInfo("Rscript") { RedirectStandardOutput = true };
            string[] words =
            [
                "--vanilla",
                script,
                rows,
                $"{spells.Length}",
                $"{columns.Length}",
                $"{times}",
                distribution == LifeDistribution.Weibull ? "weibull" : "lognormal",
            ];
            foreach (var word in words)
                start.ArgumentList.Add(word);
            using var process = Process.Start(start)!;
            var lines = (await process.StandardOutput.ReadToEndAsync()).Split('\n').Select(line => line.Trim().Split(' ')).ToList();
            await process.WaitForExitAsync();
            double[] Numbers(string name) =>
                [.. lines.Where(l => l[0] == name).SelectMany(l => l.Skip(1)).Select(n => double.Parse(n, CultureInfo.InvariantCulture))];
            return new SurvregFit(
                string.Join(' ', lines.Single(l => l[0] == "version").Skip(1)),
                Numbers("seconds"),
                Numbers("processor"),
                Numbers("parameters")
            );
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static void Write(FileStream file, double[] values) => file.Write(MemoryMarshal.AsBytes<double>(values));
}
