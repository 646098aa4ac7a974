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
}
