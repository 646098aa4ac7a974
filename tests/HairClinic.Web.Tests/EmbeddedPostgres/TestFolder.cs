using HairClinic.EmbeddedPostgres;

namespace HairClinic.Web.Tests.EmbeddedPostgres;

/// <summary>A data folder under the system's temporary folder. The server makes it; it goes when the test ends.</summary>
internal sealed class TestFolder : IDisposable
{
    public TestFolder(string inner = "")
    {
        Root = System.IO.Path.Combine(System.IO.Path.GetTempPath(), "hairclinic-test-" + Guid.NewGuid().ToString("N")[..8]);
        Path = System.IO.Path.Combine(Root, inner);
    }

    public string Path { get; }

    public string Cluster => System.IO.Path.Combine(Path, "database");
    public string LogFile => System.IO.Path.Combine(Path, "database.log");

    private string Root { get; }

    public EmbeddedServerOptions Options(bool durable = false) => new(Path) { Durable = durable };

    public void Dispose()
    {
        if (Directory.Exists(Root))
            Directory.Delete(Root, recursive: true);
    }
}
