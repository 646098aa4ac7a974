using HairClinic.Web.Data.Sql;

namespace HairClinic.Web.Data;

/// <summary>Brings the schema up to date as the migrator, one program at a time, and refuses to run as anyone who could step over the fence.</summary>
public static class SchemaMigrator
{
    private const long LockNumber = 0x48_41_49_52;

    public static async Task MigrateAsync(string migratorConnection, CancellationToken cancellation)
    {
        // Outside the pool: a pooled connection keeps its session's locks until it is used again.
        var alone = new NpgsqlConnectionStringBuilder(migratorConnection) { Pooling = false };
        await using var holder = new NpgsqlConnection(alone.ConnectionString);
        await holder.OpenAsync(cancellation);
        await using (var take = new NpgsqlCommand("select pg_advisory_lock($1)", holder))
        {
            take.Parameters.Add(new() { Value = LockNumber });
            await take.ExecuteNonQueryAsync(cancellation);
        }
        await using var db = new ClinicDb(ClinicDbOptions.For(migratorConnection));
        RefuseOpenTables(db);
        var (known, applied) = (db.Database.GetMigrations().ToList(), await AppliedAsync(db, cancellation));
        if (EarlierDatabase.Is(applied))
            await EarlierDatabase.AdoptAsync(migratorConnection, applied, known[0], cancellation);
        else
            RefuseNewer(db, applied);
        if ((await db.Database.GetPendingMigrationsAsync(cancellation)).Any())
            await db.Database.MigrateAsync(cancellation);
        await SqlInstaller.InstallAsync(migratorConnection, known[^1], cancellation);
    }

    /// <exception cref="InvalidOperationException">The schema is older or newer than this program.</exception>
    public static async Task ThrowIfSchemaDiffersAsync(string programConnection, CancellationToken cancellation)
    {
        await using var db = new ClinicDb(ClinicDbOptions.For(programConnection));
        var known = db.Database.GetMigrations().ToList();
        var applied = await AppliedAsync(db, cancellation);
        if (!EarlierDatabase.Is(applied))
            RefuseNewer(db, applied);
        if (!known.SequenceEqual(applied))
        {
            throw new InvalidOperationException(
                $"The database is at version “{(applied.Count == 0 ? "empty" : applied[^1])}”, this program needs “{known[^1]}”. "
                    + "Run the `migrate` verb with ConnectionStrings__Migrator set, or use the program of that version."
            );
        }
        if (!await SqlInstaller.IsInstalledAsync(programConnection, known[^1], cancellation))
        {
            throw new InvalidOperationException(
                "The database's rules about who may read what are another program version's. "
                    + "Run the `migrate` verb with ConnectionStrings__Migrator set."
            );
        }
    }

    private static async Task<IReadOnlyList<string>> AppliedAsync(ClinicDb db, CancellationToken cancellation)
    {
        try
        {
            return [.. await db.Database.GetAppliedMigrationsAsync(cancellation)];
        }
        catch (PostgresException e) when (e.SqlState is PostgresErrorCodes.UndefinedTable or PostgresErrorCodes.InsufficientPrivilege)
        {
            return [];
        }
    }

    // This program could lose what a newer one wrote.
    private static void RefuseNewer(ClinicDb db, IEnumerable<string> applied)
    {
        if (applied.Except(db.Database.GetMigrations()).Order(StringComparer.Ordinal).LastOrDefault() is { } newest)
            throw new InvalidOperationException(
                $"A newer program worked on this database (“{newest}”), and this one does not know what that changed: start the newer one, "
                    + "or restore the backup from before it (deploy/README.md, “A new version, and back”)."
            );
    }

    // A table with a practice but without a rule would be open to every practice, which is never intended.
    private static void RefuseOpenTables(ClinicDb db)
    {
        var fenced = db.Model.GetEntityTypes().Where(t => t.ClrType.IsAssignableTo(typeof(PracticeOwned))).Select(t => t.GetTableName()!);
        if (fenced.Except(AccessRules.All.Select(r => r.Table)).Order(StringComparer.Ordinal).ToList() is { Count: > 0 } open)
            throw new InvalidOperationException($"These tables have no rule in {nameof(AccessRules)}: {string.Join(", ", open)}.");
    }

    /// <summary>The program's role owns nothing and bypasses nothing; otherwise the fence would not hold.</summary>
    /// <exception cref="InvalidOperationException">The role is too strong.</exception>
    public static async Task RefuseStrongRoleAsync(string programConnection, CancellationToken cancellation)
    {
        await using var connection = new NpgsqlConnection(programConnection);
        await connection.OpenAsync(cancellation);
        await using var ask = new NpgsqlCommand(
            """
            select rolsuper or rolbypassrls
                or exists (select from pg_class c join pg_namespace n on n.oid = c.relnamespace
                           where n.nspname = 'public' and pg_has_role(current_user, c.relowner, 'usage'))
            from pg_roles where rolname = current_user
            """,
            connection
        );
        if (await ask.ExecuteScalarAsync(cancellation) is not false)
        {
            throw new InvalidOperationException(
                "The program's database role is a superuser, bypasses row security or owns tables. "
                    + "Give it a role that owns nothing; the tables belong to the migrator."
            );
        }
    }
}
