using HairClinic.EmbeddedPostgres;
using HairClinic.Web.Keys;

namespace HairClinic.Web.Data.Sealing;

/// <summary>
/// The master keys of this program. They are read once, from a file outside the database, and checked against what the
/// database remembers of them; a first start makes the file. A key never leaves the file: old sealed rows and the access log need it.
/// </summary>
public sealed class MasterKeys(IConfiguration configuration, DatabaseLifetime database, IClock clock)
{
    private const long LockNumber = 0x4B_45_59_53;

    private readonly Lock _gate = new();
    private IReadOnlyList<MasterKey>? _keys;

    /// <summary><c>Keys:File</c>, else <c>keys/master.json</c> in the data folder, beside the database and not in it.</summary>
    public string File =>
        configuration["Keys:File"] is { Length: > 0 } named
            ? Path.GetFullPath(named)
            : Path.Combine(Path.GetFullPath(configuration["data"] ?? DefaultFolders.Data), "keys", "master.json");

    /// <summary>Wraps and signs what is new.</summary>
    public MasterKey Current => All[^1];

    /// <summary>Oldest first.</summary>
    /// <exception cref="InvalidOperationException">The file is missing though the database holds sealed data, or is not the one they need.</exception>
    public IReadOnlyList<MasterKey> All
    {
        get
        {
            lock (_gate)
                return _keys ??= Load();
        }
    }

    /// <summary>Reads and checks the keys now, so that a program that could not open its data does not start.</summary>
    public void LoadAndCheck() => _ = All;

    /// <returns>Null when the file has no such key, even after reading it again.</returns>
    public MasterKey? Find(string id)
    {
        if (All.FirstOrDefault(k => k.Id == id) is { } known)
            return known;
        lock (_gate)
            _keys = Load();
        return All.FirstOrDefault(k => k.Id == id);
    }

    /// <summary>Adds a new current key: to the file first, so that nothing is ever wrapped under a key that is not kept.</summary>
    public MasterKey GenerateNew()
    {
        lock (_gate)
        {
            var made = MasterKey.Make(clock.GetCurrentInstant());
            IReadOnlyList<MasterKey> keys = [.. _keys ?? Load(), made];
            MasterKeyFile.Write(File, keys);
            _keys = Load();
            return made;
        }
    }

    // One program at a time: two first starts at once agree on one file.
    private List<MasterKey> Load()
    {
        // Asked for only here: who protects cookies is decided before the database is open.
        using var db = new ClinicDb(ClinicDbOptions.For(database.Connections.Program));
        using var transaction = db.Database.BeginTransaction();
        db.Database.ExecuteSql($"select pg_advisory_xact_lock({LockNumber})");
        var marks = db.MasterKeyMarks.AsNoTracking().ToList();
        var keys = MasterKeyFile.Read(File) ?? Make(marks.Count);
        foreach (var mark in marks)
        {
            if (
                keys.FirstOrDefault(k => k.Id == mark.Id) is not { } key
                || !CryptographicOperations.FixedTimeEquals(key.Fingerprint(), mark.Mark)
            )
                throw new InvalidOperationException(
                    $"The key file {File} lacks key {mark.Id}, under which data in this database are sealed. Put the file that belongs to this database back from its backup."
                );
        }
        db.MasterKeyMarks.AddRange(keys.Where(k => marks.All(m => m.Id != k.Id)).Select(k => new MasterKeyMark(k)));
        db.SaveChanges();
        transaction.Commit();
        return [.. keys];
    }

    private IReadOnlyList<MasterKey> Make(int marks)
    {
        if (marks > 0)
            throw new InvalidOperationException(
                $"The key file {File} is missing, and the sealed data in this database cannot be opened without it. Put it back from its backup, or say where it is with Keys__File."
            );
        IReadOnlyList<MasterKey> first = [MasterKey.Make(clock.GetCurrentInstant())];
        MasterKeyFile.Write(File, first);
        return first;
    }
}
