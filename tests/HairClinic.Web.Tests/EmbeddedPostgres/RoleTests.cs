using HairClinic.Web.Data;
using Npgsql;

namespace HairClinic.Web.Tests.EmbeddedPostgres;

public sealed class RoleTests(PgServer server)
{
    private DatabaseConnectionStrings Connections => server.Connections;
    private string Migrator => Connections.Migrator!;
    private string Keeper => Connections.Keeper!;

    [Theory]
    [InlineData("hairclinic_program", false)]
    [InlineData("hairclinic_migrator", true)]
    [InlineData("hairclinic_keeper", true)]
    public async Task Only_migrator_and_keeper_see_past_row_security_and_none_has_other_powers(string role, bool seesPast)
    {
        const string powers =
            "select concat_ws(' ', rolcanlogin, rolbypassrls, rolsuper or rolcreatedb or rolcreaterole or rolreplication) from pg_roles where rolname = ";
        Assert.Equal(seesPast ? "t t f" : "t f f", await Sql.AskAsync(Connections.Program, $"{powers}'{role}'"));
    }

    [Fact]
    public async Task The_migrator_owns_the_database_and_the_program_owns_nothing()
    {
        Assert.Equal(
            "hairclinic_migrator",
            await Sql.AskAsync(Migrator, "select pg_get_userbyid(datdba) from pg_database where datname = current_database()")
        );
        const string owned = "select count(*) from pg_shdepend where deptype = 'o' and refobjid = 'hairclinic_program'::regrole";
        Assert.Equal(0L, await Sql.AskAsync(Migrator, owned));
    }

    [Theory]
    [InlineData("create table probe (id int)")]
    [InlineData("create temporary table probe (id int)")]
    [InlineData("create schema probe")]
    public async Task The_program_can_make_nothing(string sql) =>
        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, await Sql.RefusalAsync(Connections.Program, sql));

    [Fact]
    public async Task The_keeper_reads_what_it_was_never_granted_past_row_security_and_writes_nothing()
    {
        const string table = """
            create table keeper_probe (word text);
            alter table keeper_probe enable row level security;
            alter table keeper_probe force row level security;
            insert into keeper_probe values ('kept')
            """;
        await Sql.AskAsync(Migrator, table);
        try
        {
            Assert.Equal("kept", await Sql.AskAsync(Keeper, "select word from keeper_probe"));
            const string insert = "insert into keeper_probe values ('mine')";
            Assert.Equal(PostgresErrorCodes.ReadOnlySqlTransaction, await Sql.RefusalAsync(Keeper, insert));
            var insisting = $"begin read write; {insert}";
            Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, await Sql.RefusalAsync(Keeper, insisting));
        }
        finally
        {
            await Sql.AskAsync(Migrator, "drop table keeper_probe");
        }
    }

    [Fact]
    public async Task The_migrator_may_add_the_extension_that_forbids_double_booking()
    {
        const string sql =
            "begin; create extension if not exists btree_gist; select extname from pg_extension where extname = 'btree_gist'; rollback";
        Assert.Equal("btree_gist", await Sql.AskAsync(Migrator, sql));
    }

    [Fact]
    public async Task The_database_keeps_every_script_and_orders_by_bytes()
    {
        Assert.Equal(
            "UTF8 C C",
            await Sql.AskAsync(
                Migrator,
                "select concat_ws(' ', pg_encoding_to_char(encoding), datcollate, datctype) from pg_database where datname = current_database()"
            )
        );
        Assert.Equal("Zoë 美 ✂", await Sql.AskAsync(Migrator, "select 'Zoë 美 ✂'"));
    }

    [Fact]
    public async Task Nobody_gets_in_without_the_password()
    {
        var wrong = new NpgsqlConnectionStringBuilder(Connections.Program) { Password = "wrong" }.ConnectionString;
        Assert.Equal(PostgresErrorCodes.InvalidPassword, await Sql.RefusalAsync(wrong, "select 1"));
    }
}
