using HairClinic.Web.Data;
using HairClinic.Web.Tests.EmbeddedPostgres;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

namespace HairClinic.Web.Tests.Data.Migrations;

/// <summary>Operations of an older book keep their name on screens, and do not stop bonds that were made since.</summary>
public sealed class JudgeEventsByHoldTests(PgServer server)
{
    private const string Initial = "20261129130516_InitialCreate";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Surgery_becomes_an_operation_after_which_bonding_began_with_the_next_bond()
    {
        await using var book = await EarlierBook.LayAsync(server);
        await using (var db = book.Open())
            await db.GetService<IMigrator>().MigrateAsync(Initial, Cancel);
        await Sql.AskAsync(book.Administrator, Fenced);
        await Sql.AskAsync(book.Administrator, Old);

        await SchemaMigrator.MigrateAsync(book.Migrator, Cancel);

        Assert.Equal(
            ["1 Operation 2026-05-20", "2 Operation never", "3 Travel never"],
            await book.ReadAsync(
                "select right(id::text, 1) || ' ' || kind || ' ' || coalesce(bonding_again_from::text, 'never') from life_events order by id"
            )
        );
        Assert.Equal(
            ["99 90"],
            await book.ReadAsync("select celebration_sound_percent || ' ' || journey_sound_percent from practice_settings")
        );
        Assert.Equal(["RefreshDueDates"], await book.ReadAsync("select kind from work_items"));
        Assert.Equal(
            ["t"],
            await book.ReadAsync("select left(bool_and(relforcerowsecurity)::text, 1) from pg_class where relname in ('life_events', 'bonds')")
        );
    }

    // What is laid over the tables now knows columns that came later; of it only this bears on what a migration may change.
    private const string Fenced = """
        do $$
        declare t text;
        begin
            foreach t in array array['practice_settings', 'life_events', 'bonds', 'work_items', 'hair_systems'] loop
                execute format('alter table %I enable row level security', t);
                execute format('alter table %I force row level security', t);
            end loop;
        end $$;
        """;

    // The first was followed by bonds, one of them taken back; the second comes after the last bond.
    private const string Old = """
        set session_replication_role = replica;
        create function pg_temp.id(n int) returns uuid language sql as $$ select ('00000000-0000-7000-8000-00000000000' || n)::uuid $$;
        insert into practice_settings (practice_id, id, name, region, culture, cure_hours, days_before_event, opening_soon_days, slot_minutes,
                grant_days_after_visit, client_move_hours, preparation_days, gap_chance_percent, is_demo)
            values (pg_temp.id(0), pg_temp.id(9), 'Practice', 'GB', 'en-GB', 24, 5, 7, 15, 90, 24, 14, 5, false);
        insert into life_events (practice_id, id, client_id, kind, "from", "to", away) values
            (pg_temp.id(0), pg_temp.id(1), pg_temp.id(8), 'Surgery', '2026-05-01', '2026-05-03', true),
            (pg_temp.id(0), pg_temp.id(2), pg_temp.id(8), 'Surgery', '2026-08-01', '2026-08-03', true),
            (pg_temp.id(0), pg_temp.id(3), pg_temp.id(8), 'Travel', '2026-05-01', '2026-05-03', true);
        insert into bonds (practice_id, id, hair_system_id, client_id, applied_on, attachment, opens_on, target_on, due_on, closes_on,
                due_reasons, removed_on, removed_because)
            select pg_temp.id(0), pg_temp.id(n), pg_temp.id(7), pg_temp.id(8), on_day, 'Liquid', on_day, on_day, on_day, on_day, '[]', on_day, why
            from (values (1, date '2026-04-01', 'Scheduled'), (2, date '2026-05-10', 'TakenBack'), (3, date '2026-05-20', 'Scheduled'),
                (4, date '2026-06-20', 'Scheduled')) b (n, on_day, why);
        """;
}
