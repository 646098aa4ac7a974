using Microsoft.EntityFrameworkCore.Migrations;

namespace HairClinic.Web.Data.Migrations;

/// <summary>Consents, their words and erasures are only added to; on an erased client nothing more is written, whoever tries.</summary>
public static class PrivacySql
{
    public const string NotErased = "client_not_erased";

    /// <summary>Tables whose rows name their client: no row comes or changes once the client is erased.</summary>
    public static readonly string[] Guarded =
    [
        "life_events",
        "care_facts",
        "contact_notes",
        "visits",
        "consents",
        "health_answers",
        "sealed_drafts",
        "clearances",
        "photos",
        "guardians",
        "calendar_feeds",
        "client_preferences",
        "client_requests",
    ];

    /// <summary>Tables that stay with an erased client: their rows may still change, as a unit goes elsewhere, but none comes.</summary>
    public static readonly string[] GuardedAtFirst = ["hair_systems", "bonds"];

    public static void OnlyAdd(MigrationBuilder migration) =>
        migration.Sql(
            """
            revoke update, delete, truncate on consents, consent_texts, erasures from hairclinic_program;

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
            revoke all on function forget_the_invented() from public;
            grant execute on function forget_the_invented() to hairclinic_program;
            """
        );

    public static void KeepErased(MigrationBuilder migration)
    {
        // As its owner: the row has to be seen and held even by who may not change clients. It waits for an erasure under way.
        migration.Sql(
            $"""
            create function refuse_the_erased(practice uuid, client uuid) returns void
            language plpgsql security definer set search_path = public as $$
            declare gone timestamptz;
            begin
                select erased_at into gone from clients where practice_id = practice and id = client for key share;
                if gone is not null then
                    raise exception 'This client was erased.' using errcode = 'check_violation', constraint = '{NotErased}';
                end if;
            end $$;
            revoke all on function refuse_the_erased(uuid, uuid) from public;
            grant execute on function refuse_the_erased(uuid, uuid) to hairclinic_program;

            create function refuse_rows_of_the_erased() returns trigger language plpgsql as $$
            begin
                perform refuse_the_erased(new.practice_id, new.client_id);
                return new;
            end $$;

            create function refuse_records_of_the_erased() returns trigger language plpgsql as $$
            begin
                perform refuse_the_erased(v.practice_id, v.client_id) from visits v
                    where v.practice_id = new.practice_id and v.id = new.visit_id;
                return new;
            end $$;
            create trigger not_erased before insert or update on visit_records
                for each row execute function refuse_records_of_the_erased();

            create function refuse_to_change_the_erased() returns trigger language plpgsql as $$
            begin
                raise exception 'This client was erased.' using errcode = 'check_violation', constraint = '{NotErased}';
            end $$;
            create trigger not_erased before update on clients
                for each row when (old.erased_at is not null) execute function refuse_to_change_the_erased();
            """
        );
        foreach (var table in Guarded)
            Guard(migration, table, "insert or update");
        foreach (var table in GuardedAtFirst)
            Guard(migration, table, "insert");
    }

    public static void Guard(MigrationBuilder migration, string table, string deeds) =>
        migration.Sql(
            $"create trigger not_erased before {deeds} on {table} for each row execute function refuse_rows_of_the_erased();"
        );
}
