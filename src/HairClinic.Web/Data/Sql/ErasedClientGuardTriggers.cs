namespace HairClinic.Web.Data.Sql;

/// <summary>On an erased client nothing more is written, whoever tries.</summary>
public static class ErasedClientGuardTriggers
{
    /// <summary>The name under which it is refused.</summary>
    public const string NotErased = "client_not_erased";

    // Their rows name their client: none comes or changes once the client is erased.
    private static readonly string[] Closed =
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
        "opening_addresses",
    ];

    // They stay with an erased client: their rows may still change, as a unit goes elsewhere, but none comes.
    private static readonly string[] ClosedToNew = ["hair_systems", "bonds", "unit_loans"];

    /// <remarks>As its owner: the row has to be seen and held even by who may not change clients. It waits for an erasure under way.</remarks>
    public static string Sql { get; } =
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

            create function refuse_rows_of_the_erased() returns trigger language plpgsql security definer set search_path = public as $$
            begin
                perform refuse_the_erased(new.practice_id, new.client_id);
                return new;
            end $$;

            create function refuse_records_of_the_erased() returns trigger language plpgsql security definer set search_path = public as $$
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
        + string.Concat(Closed.Select(t => Trigger(t, "insert or update")))
        + string.Concat(ClosedToNew.Select(t => Trigger(t, "insert")));

    private static string Trigger(string table, string writes) =>
        $"\ncreate trigger not_erased before {writes} on {table} for each row execute function refuse_rows_of_the_erased();";
}
