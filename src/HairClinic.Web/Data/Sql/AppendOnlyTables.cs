namespace HairClinic.Web.Data.Sql;

/// <summary>
/// The access log, consents, their words and erasures are only ever added to: the program's role cannot change or remove a row, and no
/// one but a superuser can change a line of the log. An invented practice is forgotten whole.
/// </summary>
public static class AppendOnlyTables
{
    public const string Sql = """
        revoke update, delete, truncate on access_notes, master_key_marks, consents, consent_texts, erasures from hairclinic_program;
        revoke delete, truncate on access_heads from hairclinic_program;

        create function refuse_to_change_the_log() returns trigger language plpgsql as $$
        begin
            if (select rolsuper from pg_roles where rolname = current_user) then
                return null;
            end if;
            raise exception 'The access log is only added to.' using errcode = 'insufficient_privilege';
        end $$;
        create trigger only_added_to before update or delete or truncate on access_notes
            for each statement execute function refuse_to_change_the_log();

        create function forget_the_invented() returns int
        language plpgsql security definer set search_path = public as $$
        declare
            acting uuid := nullif(current_setting('app.practice', true), '')::uuid;
            gone int := 0;
            took int;
        begin
            if not exists (select from practice_settings where practice_id = acting and is_demo) then
                return 0;
            end if;
            delete from consents where practice_id = acting;
            get diagnostics took = row_count; gone := gone + took;
            delete from consent_texts where practice_id = acting;
            get diagnostics took = row_count; gone := gone + took;
            delete from erasures where practice_id = acting;
            get diagnostics took = row_count;
            return gone + took;
        end $$;
        """;
}
