using Microsoft.EntityFrameworkCore.Migrations;

namespace HairClinic.Web.Data.Migrations;

/// <summary>
/// SQL that every fenced table gets: row security forced on, and a policy that shows and takes only rows
/// of the acting practice. A layout test fails for a fenced table without it.
/// </summary>
public static class Fence
{
    // After a pool reset the setting reads as an empty string, not null.
    private const string ActingPractice = "nullif(current_setting('app.practice', true), '')::uuid";

    public static void Around(MigrationBuilder migration, params ReadOnlySpan<string> tables)
    {
        foreach (var table in tables)
        {
            migration.Sql(
                $"""
                alter table {table} enable row level security;
                alter table {table} force row level security;
                create policy practice on {table}
                    using (practice_id = {ActingPractice}) with check (practice_id = {ActingPractice});
                """
            );
        }
    }

    /// <summary>What the program and the keeper may touch, now and in later migrations.</summary>
    public static void GrantRoles(MigrationBuilder migration) =>
        migration.Sql(
            """
            grant usage on schema public to hairclinic_program, hairclinic_keeper;
            grant select, insert, update, delete on all tables in schema public to hairclinic_program;
            revoke insert, update, delete on "__EFMigrationsHistory" from hairclinic_program;
            grant select on all tables in schema public to hairclinic_keeper;
            alter default privileges in schema public grant select, insert, update, delete on tables to hairclinic_program;
            alter default privileges in schema public grant select on tables to hairclinic_keeper;
            grant usage, select on all sequences in schema public to hairclinic_program;
            alter default privileges in schema public grant usage, select on sequences to hairclinic_program;
            """
        );

    /// <summary>
    /// No two visits on a chair and no two hands-on segments of a person overlap, whoever writes them.
    /// Ranges are used only here: reads go by the plain columns, which row security lets an index serve.
    /// </summary>
    public static void ForbidClashes(MigrationBuilder migration) =>
        migration.Sql(
            """
            alter table visits add constraint ex_visits_chair
                exclude using gist (practice_id with =, chair_id with =, tstzrange(starts_at, ends_at) with &&)
                where (holds_chair);
            alter table visit_segments add constraint ex_visit_segments_hands
                exclude using gist (practice_id with =, person_id with =, tstzrange(starts_at, ends_at) with &&)
                where (holds_hands);
            """
        );

    /// <summary>
    /// A chair is taken step by step, as the search for free times has it, and a client is in one place at a time. What overlaps
    /// already stays: of two visits of one client the one made later stands aside.
    /// </summary>
    public static void HoldOnePlaceAtATime(MigrationBuilder migration) =>
        migration.Sql(
            """
            -- A visit of an old book without steps was taken to be one step all the same, wherever it was read.
            insert into visit_segments (practice_id, id, visit_id, position, kind, person_id, starts_at, ends_at, holds_hands, holds_chair)
                select v.practice_id, gen_random_uuid(), v.id, 1, 'HandsOn', v.person_id, v.starts_at, v.ends_at, false, false
                from visits v
                where v.holds_chair and not exists (select from visit_segments s where s.practice_id = v.practice_id and s.visit_id = v.id);
            update visit_segments s set chair_id = v.chair_id, holds_chair = v.holds_chair and s.kind <> 'ChairFree'
                from visits v where v.practice_id = s.practice_id and v.id = s.visit_id and v.chair_id is not null;
            do $$
            begin
                if exists (select from visits v where v.holds_chair and v.chair_id is not null and not exists (
                    select from visit_segments s
                    where s.practice_id = v.practice_id and s.visit_id = v.id and s.chair_id = v.chair_id
                      and (s.holds_chair or s.kind = 'ChairFree'))) then
                    raise exception 'a visit lost its chair';
                end if;
            end $$;
            alter table visits drop constraint ex_visits_chair;
            alter table visit_segments add constraint ex_visit_segments_chair
                exclude using gist (practice_id with =, chair_id with =, tstzrange(starts_at, ends_at) with &&)
                where (holds_chair);

            -- What is past takes nobody's time any more; on an erased client nothing is written.
            update visits v set holds_client = true
                where v.state in ('Booked', 'Arrived', 'InChair') and v.ends_at > now()
                  and exists (select from clients c where c.practice_id = v.practice_id and c.id = v.client_id and c.erased_at is null);
            -- Ids are made in the order of time.
            do $$
            declare
                later record;
            begin
                for later in
                    select v.practice_id, v.id, v.client_id, v.starts_at, v.ends_at from visits v
                    where v.holds_client and exists (select from visits o
                        where o.practice_id = v.practice_id and o.client_id = v.client_id and o.id < v.id and o.holds_client
                          and o.starts_at < v.ends_at and o.ends_at > v.starts_at)
                    order by v.practice_id, v.id
                loop
                    update visits v set holds_client = false
                        where v.practice_id = later.practice_id and v.id = later.id
                          and exists (select from visits o
                            where o.practice_id = v.practice_id and o.client_id = v.client_id and o.id < v.id and o.holds_client
                              and o.starts_at < v.ends_at and o.ends_at > v.starts_at);
                end loop;
            end $$;
            alter table visits add constraint ex_visits_client
                exclude using gist (practice_id with =, client_id with =, tstzrange(starts_at, ends_at) with &&)
                where (holds_client);
            """
        );
}
