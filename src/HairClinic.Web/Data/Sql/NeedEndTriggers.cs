namespace HairClinic.Web.Data.Sql;

/// <summary>
/// When a client's need ends, what waits to be sent to them goes with the same save, and so does what opens their pages: whoever ends
/// it may read neither, so the database does it. Whoever tries without keeps their own page and the link they asked for.
/// </summary>
public static class NeedEndTriggers
{
    public const string Sql = """
        create function end_need() returns trigger language plpgsql security definer set search_path = public as $$
        declare
            keeps boolean := coalesce(new.need_ended_because = 'TryingWithout', false);
        begin
            delete from work_items w
                where w.practice_id = new.practice_id and w.kind = 'SendMail' and w.done_at is null and w.handed_at is null
                  and new.id::text in (w.body ->> 'For', w.body ->> 'ClientId')
                  and not (keeps and w.body ->> 'Kind' = 'SignInLink');
            update sign_in_links l set used_at = app_now()
                where l.practice_id = new.practice_id and l.client_id = new.id and l.used_at is null and (l.invitation or not keeps);
            if keeps then
                return null;
            end if;
            update client_sign_ins i set ended_at = app_now()
                where i.practice_id = new.practice_id and i.client_id = new.id and i.ended_at is null;
            update calendar_feeds f set ended_at = app_now()
                where f.practice_id = new.practice_id and f.client_id = new.id and f.ended_at is null;
            update opening_addresses a set link_hash = null, link_expires_at = null
                where a.practice_id = new.practice_id and a.client_id = new.id and a.link_hash is not null;
            return null;
        end $$;
        create trigger end_need after update of left_on, need_ended_because on clients
            for each row when (new.left_on is not null
                and (old.left_on, old.need_ended_because) is distinct from (new.left_on, new.need_ended_because))
            execute function end_need();
        """;
}
