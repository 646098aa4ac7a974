using Microsoft.EntityFrameworkCore.Migrations;

namespace HairClinic.Web.Data.Migrations;

/// <summary>The access log is only ever added to: the program's role cannot change or remove a line, and no one but a superuser can.</summary>
public static class AccessLogSql
{
    public static void OnlyAdd(MigrationBuilder migration) =>
        migration.Sql(
            """
            revoke update, delete, truncate on access_notes from hairclinic_program;
            revoke delete, truncate on access_heads from hairclinic_program;
            revoke update, delete, truncate on master_key_marks from hairclinic_program;

            create function refuse_to_change_the_log() returns trigger language plpgsql as $$
            begin
                if (select rolsuper from pg_roles where rolname = current_user) then
                    return null;
                end if;
                raise exception 'The access log is only added to.' using errcode = 'insufficient_privilege';
            end $$;
            create trigger only_added_to before update or delete or truncate on access_notes
                for each statement execute function refuse_to_change_the_log();
            """
        );
}
