namespace HairClinic.EmbeddedPostgres;

/// <summary>
/// Who the server runs as. PostgreSQL refuses root, so a program started by root runs it as <c>postgres</c> where Debian has made
/// that user, else as <c>nobody</c>; an ordinary person runs it as themselves.
/// </summary>
internal sealed record ServerUser
{
    private readonly (string Name, string Group)? _other;

    private ServerUser((string Name, string Group)? other) => _other = other;

    public static ServerUser Choose()
    {
        if (!Environment.IsPrivilegedProcess)
            return new(other: null);
        var users = File.ReadLines("/etc/passwd").Select(l => l.Split(':')).Where(f => f.Length > 3).ToList();
        var chosen = users.Find(f => f[0] == "postgres") ?? users.Find(f => f[0] == "nobody");
        if (chosen is null)
            throw new EmbeddedServerException(
                "PostgreSQL may not run as root, and this machine has neither a user 'postgres' nor 'nobody'. Start HairClinic as an ordinary user."
            );
        return new((chosen[0], chosen[3]));
    }

    /// <summary>The words before a command that make it run as this user.</summary>
    public IEnumerable<string> Prefix =>
        _other is null ? [] : ["setpriv", $"--reuid={_other.Value.Name}", $"--regid={_other.Value.Group}", "--clear-groups", "--"];

    public void ChangeOwner(string path)
    {
        if (_other is not null)
            ProcessRunner.RunOrThrow("chown", "-R", $"{_other.Value.Name}:{_other.Value.Group}", path);
    }

    /// <summary>Refuses a path this user cannot reach, naming the folder in the way.</summary>
    public void RequireAccess(string path)
    {
        if (_other is null || ProcessRunner.Run([.. Prefix, "test", "-x", path]) is (0, _))
            return;
        var closed = path;
        for (var folder = Path.GetDirectoryName(path); folder is not null; folder = Path.GetDirectoryName(folder))
            if (ProcessRunner.Run([.. Prefix, "test", "-x", folder]) is not (0, _))
                closed = folder;
        throw new EmbeddedServerException(
            $"PostgreSQL may not run as root, so it runs as '{_other.Value.Name}', who cannot enter {closed} and so not {path}. "
                + $"Use a place open to that user ({DefaultFolders.Data} for data, {DefaultFolders.Tools} for tools), or start HairClinic as an ordinary user."
        );
    }
}
