using HairClinic.Web.Data;
using HairClinic.Web.Tests.EmbeddedPostgres;

namespace HairClinic.Web.Tests.Data.Migrations;

/// <summary>A book in which one client has overlapping visits is brought up to date: all of them stay, and none is in the way.</summary>
public sealed class OnePlaceAtATimeTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Of_overlapping_visits_the_one_made_later_stands_aside_and_chairs_are_taken_step_by_step()
    {
        await using var book = await EarlierBook.LayAsync(server, "the-five");
        await Sql.AskAsync(book.Administrator, Old);

        await SchemaMigrator.MigrateAsync(book.Migrator, Cancel);

        Assert.Equal(
            ["1 t", "2 f", "3 t", "4 f", "5 f", "6 f", "7 t"],
            await book.ReadAsync("select right(id::text, 1) || ' ' || left(holds_client::text, 1) from visits order by id")
        );
        Assert.Equal(
            ["1 1 HandsOn t", "1 2 ChairFree f", "1 3 Wait t", "4 1 HandsOn f", "7 1 HandsOn t"],
            await book.ReadAsync(
                """
                select right(visit_id::text, 1) || ' ' || position || ' ' || kind || ' ' || left(holds_chair::text, 1)
                from visit_segments order by visit_id, position
                """
            )
        );
    }

    // 2 overlaps 1 and was made after it; 3 overlaps only 2; 4 is called off, 5 is past, 6 is of somebody erased, 7 has no steps.
    private const string Old = """
        set session_replication_role = replica;
        create temp table at(day timestamptz);
        insert into at values (date_trunc('day', now()) + interval '7 days');
        create function pg_temp.id(n int) returns uuid language sql as $$ select ('00000000-0000-7000-8000-00000000000' || n)::uuid $$;
        insert into salons (practice_id, id, name, zone, currency, retired)
            values (pg_temp.id(0), pg_temp.id(9), 'Elm Row', 'Europe/London', 'GBP', false);
        insert into service_kinds (practice_id, id, name, purpose, offered_to_clients, retired)
            values (pg_temp.id(0), pg_temp.id(9), 'Rebond', 'Rebond', true, false);
        insert into chairs (practice_id, id, salon_id, name, position, retired)
            values (pg_temp.id(0), pg_temp.id(8), pg_temp.id(9), 'Chair 1', 1, false);
        insert into clients (practice_id, id, code, name, home_salon_id, preferred_days, erased_at)
            values (pg_temp.id(0), pg_temp.id(1), 'C-1', 'Ada', pg_temp.id(9), 0, null), (pg_temp.id(0), pg_temp.id(2), 'C-2', 'Erased', pg_temp.id(9), 0, now());
        insert into visits (practice_id, id, client_id, salon_id, service_kind_id, chair_id, starts_at, ends_at, day, state, holds_chair)
            select pg_temp.id(0), pg_temp.id(n), pg_temp.id(client), pg_temp.id(9), pg_temp.id(9), chair, day + start, day + start + interval '90 minutes',
                   (day + start)::date, state, state = 'Booked' and chair is not null
            from at, (values
                (1, 1, pg_temp.id(8), interval '9 hours', 'Booked'), (2, 1, null, interval '10 hours', 'Booked'),
                (3, 1, null, interval '11 hours', 'Arrived'), (4, 1, pg_temp.id(8), interval '9 hours', 'Cancelled'),
                (5, 1, null, interval '-9 days', 'Booked'), (6, 2, null, interval '9 hours', 'Booked'),
                (7, 1, pg_temp.id(8), interval '15 hours', 'Booked')) v(n, client, chair, start, state);
        insert into visit_segments (practice_id, id, visit_id, position, kind, starts_at, ends_at, holds_hands)
            select pg_temp.id(0), gen_random_uuid(), v.id, s.position, s.kind,
                   v.starts_at + (s.position - 1) * interval '30 minutes', v.starts_at + s.position * interval '30 minutes', false
            from visits v, (values (1, 'HandsOn'), (2, 'ChairFree'), (3, 'Wait')) s(position, kind)
            where v.id = pg_temp.id(1) or v.id = pg_temp.id(4) and s.position = 1;
        """;
}
