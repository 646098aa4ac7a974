using Npgsql;

namespace HairClinic.EmbeddedPostgres;

/// <summary>
/// The three roles of the fence and the database, made where missing. Runs at every start, so that a first start that was cut
/// short is completed by the next. deploy/postgres/create-roles.sh does the same for an outside server.
/// </summary>
internal static class RoleSetup
{
    public const string Program = "hairclinic_program";
    public const string Migrator = "hairclinic_migrator";
    public const string Keeper = "hairclinic_keeper";
    public const string Database = "hairclinic";

    private const string NoPowers = "login nosuperuser nocreatedb nocreaterole noreplication";

    public static async Task EnsureAsync(string administrator, RolePasswords passwords, CancellationToken cancellationToken)
    {
        await using var connection = new NpgsqlConnection(administrator);
        await connection.OpenAsync(cancellationToken);

        await RoleAsync(Program, $"{NoPowers} nobypassrls", passwords.Program);
        // Under forced row-level security an owner without bypassrls would silently change no rows.
        await RoleAsync(Migrator, $"{NoPowers} bypassrls", passwords.Migrator);
        await RoleAsync(Keeper, $"{NoPowers} bypassrls", passwords.Keeper);
        await RunAsync($"alter role {Keeper} set default_transaction_read_only = on");
        await RunAsync($"grant pg_read_all_data to {Keeper}");
        // A refused statement's message quotes what was typed, such as a client's name: these roles' errors stay out of the server's log.
        // Starts, stops, crashes, refused sign-ins and trouble of the server's own processes are still written there.
        foreach (var role in new[] { "postgres", Program, Migrator, Keeper })
            await RunAsync($"alter role {role} set log_min_messages = log");

        if (!await ExistsAsync("select exists (select from pg_database where datname = $1)", Database))
            await RunAsync($"create database {Database} owner {Migrator} template template0");
        await RunAsync($"revoke all on database {Database}, postgres, template1 from public");
        await RunAsync($"grant connect on database {Database} to {Program}, {Keeper}");

        async Task RoleAsync(string name, string powers, string password)
        {
            if (await ExistsAsync("select exists (select from pg_roles where rolname = $1)", name))
                await RunAsync($"alter role {name} {powers}");
            else
                await RunAsync($"create role {name} {powers} password '{password}'");
        }

        async Task<bool> ExistsAsync(string sql, string name)
        {
            await using var command = new NpgsqlCommand(sql, connection) { Parameters = { new() { Value = name } } };
            return (bool)(await command.ExecuteScalarAsync(cancellationToken))!;
        }

        async Task RunAsync(string sql)
        {
            await using var command = new NpgsqlCommand(sql, connection);
            await command.ExecuteNonQueryAsync(cancellationToken);
        }
    }
}
