using HairClinic.Web.Tests.EmbeddedPostgres;
using Xunit.Runner.InProc.SystemConsole;

namespace HairClinic.Web.Tests;

/// <summary>Runs the tests, or is the program that a test kills.</summary>
internal static class EntryPoint
{
    public static Task<int> Main(string[] args) =>
        args is [HeldServer.Verb, var folder] ? HeldServer.HoldAsync(folder) : ConsoleRunner.Run(args);
}
