namespace HairClinic.Web.Data.Sql;

/// <summary>
/// Books that were kept before there was one first migration: with the five of 28 November 2026, or with the nine of the day after. Such
/// a book is brought up to the nine, and adopted if its tables then are those <c>InitialCreate</c> makes.
/// </summary>
public static class EarlierDatabase
{
    private static readonly string[] Five =
    [
        "20261125081013_OpenTheBook",
        "20261125084431_FindLiftedBonds",
        "20261125145024_GuardTheBook",
        "20261125171809_ShareTablets",
        "20261125215842_LearnFromWear",
    ];

    private static readonly string[] Nine =
    [
        .. Five,
        "20261128213336_OnePlaceAtATime",
        "20261128214403_KeepOpeningAddresses",
        "20261129013003_KnowInvitations",
        "20261129013956_EndWork",
    ];

    /// <summary>What <see cref="Tables"/> says where <c>InitialCreate</c> has just been applied.</summary>
    public const string InitialTables = "c19cef7ed8bfa1394906a66e44a76044";

    /// <summary>One value for all tables, columns, indexes and constraints, in whatever order they were made.</summary>
    public const string Tables = """
        select md5(string_agg(line, E'\n' order by line collate "C")) from (
            select concat_ws(' ', c.relname, a.attname, format_type(a.atttypid, a.atttypmod), a.attnotnull, a.attidentity::text,
                    pg_get_expr(d.adbin, d.adrelid)) as line
                from pg_class c join pg_namespace n on n.oid = c.relnamespace
                join pg_attribute a on a.attrelid = c.oid and a.attnum > 0 and not a.attisdropped
                left join pg_attrdef d on d.adrelid = a.attrelid and d.adnum = a.attnum
                where n.nspname = 'public' and c.relkind = 'r'
            union all
            select indexdef from pg_indexes where schemaname = 'public'
            union all
            select concat_ws(' ', c.relname, o.conname, pg_get_constraintdef(o.oid))
                from pg_constraint o join pg_class c on c.oid = o.conrelid join pg_namespace n on n.oid = c.relnamespace
                where n.nspname = 'public' and o.contype in ('p', 'u', 'f', 'c', 'x')) lines
        """;

    // What has another name now.
    private const string Rename = """
        alter table reckonings rename to recalculations;
        do $$
        declare d record;
        begin
            for d in select conname from pg_constraint where conrelid = 'recalculations'::regclass and conname like '%reckonings%' loop
                execute format('alter table recalculations rename constraint %I to %I', d.conname, replace(d.conname, 'reckonings', 'recalculations'));
            end loop;
            for d in select relname from pg_class where relkind = 'i' and relname like '%reckonings%' loop
                execute format('alter index %I rename to %I', d.relname, replace(d.relname, 'reckonings', 'recalculations'));
            end loop;
        end $$;
        update work_items set kind = 'Recalculate' where kind = 'Reckon';
        """;

    // What only InitialCreate has.
    private const string Added = """
        alter table stored_leads add posterior double precision[] not null default '{}';
        create table stored_page_results (
            practice_id uuid not null,
            id uuid not null,
            salons uuid[] not null,
            question text not null,
            answer jsonb not null,
            constraint pk_stored_page_results primary key (practice_id, id)
        );
        create index ix_stored_page_results_practice_id_question on stored_page_results (practice_id, question);
        """;

    // Columns that came later were given a value for the rows there were; that is no part of the schema. Rights come with what is laid.
    private const string Settle = """
        do $$
        declare d record;
        begin
            for d in select table_name, column_name from information_schema.columns
                where table_schema = 'public' and column_default is not null
                  and table_name in (select relname from pg_class where relkind = 'r')
            loop
                execute format('alter table %I alter column %I drop default', d.table_name, d.column_name);
            end loop;
        end $$;
        -- The name of what opens a protection key stands beside it.
        update data_protection_keys set xml = replace(xml, 'HairClinic.Web.Data.Keys.OpenedXml', 'HairClinic.Web.Data.Sealing.OpenedXml');
        alter default privileges in schema public revoke all on tables from hairclinic_program, hairclinic_keeper;
        alter default privileges in schema public revoke all on sequences from hairclinic_program;
        """;

    /// <summary>Whether these are migrations of then.</summary>
    public static bool Is(IReadOnlyList<string> applied) => applied.Count > 0 && applied.All(Nine.Contains);

    /// <summary>All or nothing: what is refused stays as it was.</summary>
    /// <exception cref="InvalidOperationException">The tables are not those this program knows.</exception>
    public static async Task AdoptAsync(
        string migratorConnection,
        IReadOnlyList<string> applied,
        string initial,
        CancellationToken cancellation
    )
    {
        if (!applied.SequenceEqual(Five) && !applied.SequenceEqual(Nine))
            throw Stranger();
        await using var connection = new NpgsqlConnection(migratorConnection);
        await connection.OpenAsync(cancellation);
        await using var transaction = await connection.BeginTransactionAsync(cancellation);
        if (applied.SequenceEqual(Five))
            await RunAsync(ClinicSql.ReadEmbeddedScript("after-the-five.sql"));
        await RunAsync(Rename);
        await RunAsync(Added);
        await RunAsync(Settle);
        await using (var ask = new NpgsqlCommand(Tables, connection))
        {
            if (await ask.ExecuteScalarAsync(cancellation) is not InitialTables)
                throw Stranger();
        }
        await using (
            var write = new NpgsqlCommand(
                """
                with gone as (delete from "__EFMigrationsHistory" returning product_version)
                insert into "__EFMigrationsHistory" (migration_id, product_version) select $1, max(product_version) from gone
                """,
                connection
            )
        )
        {
            write.Parameters.Add(new() { Value = initial });
            await write.ExecuteNonQueryAsync(cancellation);
        }
        await transaction.CommitAsync(cancellation);

        async Task RunAsync(string sql)
        {
            await using var command = new NpgsqlCommand(sql, connection);
            await command.ExecuteNonQueryAsync(cancellation);
        }
    }

    private static InvalidOperationException Stranger() =>
        new(
            "This book's tables are not as any version of this program made them, so they cannot be brought up to date: start the program "
                + "it was last kept with, take the book out with `export`, and bring it into a new one with `import`."
        );
}
