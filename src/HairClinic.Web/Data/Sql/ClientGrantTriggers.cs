namespace HairClinic.Web.Data.Sql;

/// <summary>
/// Grants that follow from the book are kept by the database, whoever writes: one without end for a client's home salon, one for
/// each other salon a visit is or was booked in, and one for each trainee whose visit it is.
/// </summary>
public static class ClientGrantTriggers
{
    public const string Sql = $"""
        create function keep_home_grant() returns trigger language plpgsql security definer set search_path = public as $$
        begin
            delete from client_grants g
                where g.practice_id = new.practice_id and g.client_id = new.id and g.reason = 'Home' and g.salon_id <> new.home_salon_id;
            insert into client_grants (practice_id, id, client_id, salon_id, reason, starts_at)
                select new.practice_id, gen_random_uuid(), new.id, new.home_salon_id, 'Home', 'epoch'
                where not exists (select from client_grants g
                    where g.practice_id = new.practice_id and g.client_id = new.id and g.reason = 'Home');
            return null;
        end $$;
        create trigger keep_home_grant after insert or update of home_salon_id on clients
            for each row execute function keep_home_grant();

        -- One client's grants from visits, worked out anew for a salon and a person. Who did not come may still walk in: their
        -- visit is seen for a day, so that the tap can be taken back.
        create function renew_visit_grants(practice uuid, client uuid, salon uuid, person uuid)
            returns void language plpgsql security definer set search_path = public as $$
        declare
            days int := coalesce((select grant_days_after_visit from practice_settings where practice_id = practice), 90);
        begin
            delete from client_grants g where g.practice_id = practice and g.client_id = client and g.reason = 'Visit'
                and (g.salon_id = salon or g.person_id = person);
            insert into client_grants (practice_id, id, client_id, salon_id, reason, starts_at, ends_at)
                select practice, gen_random_uuid(), client, salon, 'Visit', 'epoch', max(v.ends_at + case v.state when 'DidNotCome' then 1 else days end * interval '1 day')
                from visits v join clients c on c.practice_id = v.practice_id and c.id = v.client_id
                where v.practice_id = practice and v.client_id = client and v.salon_id = salon and v.state <> 'Cancelled'
                  and c.home_salon_id <> salon
                having count(*) > 0;
            insert into client_grants (practice_id, id, client_id, person_id, reason, starts_at, ends_at)
                select practice, gen_random_uuid(), client, person, 'Visit', 'epoch', max(v.ends_at + case v.state when 'DidNotCome' then 1 else days end * interval '1 day')
                from visits v join people p on p.practice_id = v.practice_id and p.id = v.person_id
                where v.practice_id = practice and v.client_id = client and v.person_id = person and v.state <> 'Cancelled'
                  and p.role = 'Trainee'
                having count(*) > 0;
        end $$;

        -- A change of the days counts for past visits too, as if it had always held.
        create function move_visit_grants() returns trigger language plpgsql security definer set search_path = public as $$
        begin
            -- Whoever was let in by a visit does not say for how long.
            if app_role() is not null and not app_all() then
                perform refuse_to_others('{HomeSalonRules.AtHome}');
            end if;
            update client_grants g
                set ends_at = g.ends_at + (new.grant_days_after_visit - old.grant_days_after_visit) * interval '24 hours'
                where g.practice_id = new.practice_id and g.reason = 'Visit' and g.ends_at is not null;
            return null;
        end $$;
        create trigger move_visit_grants after update of grant_days_after_visit on practice_settings
            for each row when (old.grant_days_after_visit is distinct from new.grant_days_after_visit) execute function move_visit_grants();

        create function keep_visit_grants() returns trigger language plpgsql security definer set search_path = public as $$
        begin
            if tg_op = 'UPDATE' and (old.client_id, old.salon_id, old.person_id) is distinct from (new.client_id, new.salon_id, new.person_id) then
                perform renew_visit_grants(old.practice_id, old.client_id, old.salon_id, old.person_id);
            end if;
            if exists (select from clients c where c.practice_id = new.practice_id and c.id = new.client_id and c.home_salon_id <> new.salon_id)
               or exists (select from people p where p.practice_id = new.practice_id and p.id = new.person_id and p.role = 'Trainee') then
                perform renew_visit_grants(new.practice_id, new.client_id, new.salon_id, new.person_id);
            end if;
            return null;
        end $$;
        create trigger keep_visit_grants after insert or update of client_id, salon_id, person_id, ends_at, state on visits
            for each row execute function keep_visit_grants();
        """;
}
