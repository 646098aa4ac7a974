using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Sql;
using Statement = HairClinic.Web.Tests.EmbeddedPostgres.Sql;

namespace HairClinic.Web.Tests.Data.Migrations;

/// <summary>Books that were kept before there was one first migration.</summary>
public sealed class EarlierDatabaseTests(PgServer server)
{
    private const string History = """select migration_id from "__EFMigrationsHistory" order by 1""";

    // All that a schema is, in whatever order it was made: columns and constraints, rights, triggers, functions, policies, views.
    private const string Whole = """
        select line from (
            select concat_ws(' ', 'column', c.relname, a.attname, format_type(a.atttypid, a.atttypmod), a.attnotnull,
                    pg_get_expr(d.adbin, d.adrelid)) as line
                from pg_class c join pg_attribute a on a.attrelid = c.oid and a.attnum > 0 and not a.attisdropped
                left join pg_attrdef d on d.adrelid = a.attrelid and d.adnum = a.attnum
                where c.relnamespace = 'public'::regnamespace and c.relkind in ('r', 'v')
            union all
            select concat_ws(' ', 'table', c.relname, c.relkind, c.relrowsecurity, c.relforcerowsecurity, (
                    select string_agg(x::text, ' ' order by x::text) from unnest(c.relacl) x))
                from pg_class c where c.relnamespace = 'public'::regnamespace and c.relkind in ('r', 'v', 'S')
            union all select concat_ws(' ', 'index', indexdef) from pg_indexes where schemaname = 'public'
            union all
            select concat_ws(' ', 'constraint', c.relname, o.conname, pg_get_constraintdef(o.oid))
                from pg_constraint o join pg_class c on c.oid = o.conrelid where c.relnamespace = 'public'::regnamespace
            union all
            select concat_ws(' ', 'trigger', pg_get_triggerdef(t.oid)) from pg_trigger t
                join pg_class c on c.oid = t.tgrelid where c.relnamespace = 'public'::regnamespace and not t.tgisinternal
            union all
            select concat_ws(' ', 'function', p.proname, md5(pg_get_functiondef(p.oid)), p.proacl::text) from pg_proc p
                where p.pronamespace = 'public'::regnamespace and p.prokind = 'f'
                  and not exists (select from pg_depend e where e.classid = 'pg_proc'::regclass and e.objid = p.oid and e.deptype = 'e')
            union all
            select concat_ws(' ', 'policy', tablename, policyname, cmd, qual, with_check) from pg_policies where schemaname = 'public'
            union all
            select concat_ws(' ', 'from now on', defaclobjtype, defaclacl::text) from pg_default_acl where defaclacl <> '{}') lines
        order by line collate "C"
        """;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_tables_that_a_book_has_to_have_are_those_that_InitialCreate_makes()
    {
        await using var fresh = await EarlierBook.LayAsync(server);
        await using (var db = fresh.Open())
            await db.GetService<IMigrator>().MigrateAsync("20261129130516_InitialCreate", Cancel);

        Assert.Equal(EarlierDatabase.InitialTables, Assert.Single(await fresh.ReadAsync(EarlierDatabase.Tables)));
    }

    [Theory]
    [InlineData("the-five")]
    [InlineData("the-five", "after-the-five")]
    public async Task A_book_of_then_is_adopted_and_is_in_nothing_different_from_a_new_one(params string[] scripts)
    {
        await using var fresh = await EarlierBook.LayAsync(server);
        await SchemaMigrator.MigrateAsync(fresh.Migrator, Cancel);
        await using var book = await EarlierBook.LayAsync(server, scripts);

        await SchemaMigrator.MigrateAsync(book.Migrator, Cancel);

        Assert.Equal(await fresh.ReadAsync(History), await book.ReadAsync(History));
        Assert.Equal(await fresh.ReadAsync(Whole), await book.ReadAsync(Whole));
    }

    [Fact]
    public async Task A_book_with_other_tables_is_refused_in_one_sentence_that_names_the_way_out_and_stays_as_it_was()
    {
        await using var book = await EarlierBook.LayAsync(server, "the-five");
        await Statement.AskAsync(book.Migrator, "alter table clients add column of_their_own text");
        var before = await book.ReadAsync(Whole);

        var refused = await Assert.ThrowsAsync<InvalidOperationException>(() => SchemaMigrator.MigrateAsync(book.Migrator, Cancel));

        Assert.Contains("take the book out with `export`", refused.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', refused.Message);
        Assert.Equal(before, await book.ReadAsync(Whole));
        Assert.Equal(5, (await book.ReadAsync(History)).Count);
    }

    [Fact]
    public async Task A_book_of_a_day_in_between_is_refused_by_the_same_sentence()
    {
        await using var book = await EarlierBook.LayAsync(server, "the-five");
        await Statement.AskAsync(
            book.Migrator,
            """insert into "__EFMigrationsHistory" (migration_id, product_version) values ('20261128213336_OnePlaceAtATime', '10.0.15')"""
        );

        var refused = await Assert.ThrowsAsync<InvalidOperationException>(() => SchemaMigrator.MigrateAsync(book.Migrator, Cancel));

        Assert.Contains("take the book out with `export`", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_program_without_the_migrator_says_that_such_a_book_is_to_be_brought_up_to_date()
    {
        await using var book = await EarlierBook.LayAsync(server, "the-five");

        var refused = await Assert.ThrowsAsync<InvalidOperationException>(() => SchemaMigrator.ThrowIfSchemaDiffersAsync(book.Migrator, Cancel));

        Assert.Contains("Run the `migrate` verb", refused.Message, StringComparison.Ordinal);
    }
}
