namespace HairClinic.Web.Data.Sql;

/// <summary>
/// What only a client's home salon does, whatever a screen forgets: move them, change the address that opens their pages, fold their
/// record into another, say that they left, erase them, and hand a row of theirs to somebody else. Whoever was let in does none of it, and makes nobody at home in a salon.
/// </summary>
public static class HomeSalonRules
{
    /// <summary>The name under which the database refuses it; the error is that of a missing right.</summary>
    public const string AtHome = "client_at_home";

    /// <summary>The name under which it refuses that somebody is made at home where whoever does it is not, or is given a role.</summary>
    public const string StaffOfSalon = "staff_of_salon";

    /// <summary>Whether the database refused it under that name.</summary>
    public static bool Violates(Exception? e, string rule) =>
        e is PostgresException p ? p.ConstraintName == rule : e?.InnerException is { } inner && Violates(inner, rule);

    /// <remarks>Where nobody acts the program reaches no row at all; whoever passes then is the migrator.</remarks>
    public const string Sql = $"""
        -- Whether whoever acts is of the client's home salon. A job that somebody began may no more than they: it counts further,
        -- it does not reach further.
        create function app_keeps(client uuid) returns boolean language sql stable security definer set search_path = public
            as $$
                select case
                    when app_role() = 'Owner' then true
                    when app_role() = 'Job' then app_actor() is null or exists (
                        select from people p
                        where p.practice_id = app_setting('practice')::uuid and p.id = app_actor() and not p."left"
                          and (p.role = 'Owner' or exists (
                              select from clients c
                              join person_salons s on s.practice_id = c.practice_id and s.salon_id = c.home_salon_id
                              where c.practice_id = p.practice_id and c.id = client and s.person_id = p.id)))
                    else app_at_home(client)
                end
            $$;

        -- The record that stands for a client whose record was folded into another, perhaps more than once.
        create function app_standing(client uuid) returns uuid language sql stable security definer set search_path = public
            as $$
                with recursive up as (
                    select c.id, c.merged_into_id from clients c where c.practice_id = app_setting('practice')::uuid and c.id = client
                    union
                    select c.id, c.merged_into_id from clients c join up on c.id = up.merged_into_id
                    where c.practice_id = app_setting('practice')::uuid)
                select id from up where merged_into_id is null
            $$;

        create function refuse_to_others(rule text) returns void language plpgsql as $$
        begin
            raise exception 'Only somebody of the salon does this.' using errcode = 'insufficient_privilege', constraint = rule;
        end $$;

        create function keep_at_home() returns trigger language plpgsql security definer set search_path = public as $$
        declare
            was clients;
        begin
            if app_role() is null then
                return new;
            end if;
            if tg_op = 'UPDATE' then
                was := old;
                if new.home_salon_id <> old.home_salon_id then
                    if not app_keeps(old.id) then
                        perform refuse_to_others('{AtHome}');
                    end if;
                    -- To a salon one does not work in a client is transferred, and that is a line of the access log.
                    if not app_all() and (new.home_salon_id = any (app_salons())) is not true and not exists (
                        select from access_notes n
                        where n.practice_id = new.practice_id and n.client_id = new.id and n.deed = 'Transferred'
                          and n.subject_id = new.home_salon_id and n.actor_id = app_actor() and n.at >= app_now()) then
                        perform refuse_to_others('{AtHome}');
                    end if;
                end if;
                if (new.left_on, new.need_ended_because, new.erased_at, nullif(lower(btrim(new.email)), ''))
                   is distinct from (old.left_on, old.need_ended_because, old.erased_at, nullif(lower(btrim(old.email)), ''))
                   and not app_keeps(app_standing(old.id)) then
                    perform refuse_to_others('{AtHome}');
                end if;
                if new.erased_at is distinct from old.erased_at and app_role() not in ('Owner', 'Manager', 'Job') then
                    perform refuse_to_others('{AtHome}');
                end if;
            end if;
            -- A record that is folded shows its own client the other: both have to be at home, whether it is folded or let go again.
            if new.merged_into_id is distinct from was.merged_into_id and not (
                app_all()
                or (tg_op = 'INSERT' or app_keeps(new.id))
                   and (new.merged_into_id is null or app_keeps(new.merged_into_id))
                   and (was.merged_into_id is null or app_keeps(was.merged_into_id))) then
                perform refuse_to_others('{AtHome}');
            end if;
            return new;
        end $$;
        create trigger keep_at_home before insert or update of home_salon_id, merged_into_id, left_on, need_ended_because, erased_at, email on clients
            for each row execute function keep_at_home();

        -- Whose a row is changes with a merge alone, so on both sides at home; what belonged to nobody yet is given to whom one reaches.
        create function keep_whose() returns trigger language plpgsql security definer set search_path = public as $$
        begin
            if app_role() is not null and not app_all() and old.client_id is not null
               and not (app_at_home(old.client_id) and app_at_home(new.client_id)) then
                perform refuse_to_others('{AtHome}');
            end if;
            return new;
        end $$;
        do $$
        declare t name;
        begin
            for t in select c.relname from pg_class c
                join pg_namespace n on n.oid = c.relnamespace
                join pg_attribute a on a.attrelid = c.oid and a.attname = 'client_id' and not a.attisdropped
                where n.nspname = 'public' and c.relkind = 'r' and c.relrowsecurity
            loop
                execute format('create trigger keep_whose before update of client_id on %I
                    for each row when (old.client_id is distinct from new.client_id) execute function keep_whose()', t);
            end loop;
        end $$;

        -- Who makes somebody at home in a salon works there; or nobody's client is at home in it yet.
        create function keep_staff() returns trigger language plpgsql security definer set search_path = public as $$
        declare
            salon uuid := case tg_op when 'DELETE' then old.salon_id else new.salon_id end;
        begin
            if app_role() is not null and not app_all() and (
                (salon = any (app_salons())) is not true
                    and exists (select from clients c where c.practice_id = app_setting('practice')::uuid and c.home_salon_id = salon)
                or tg_op = 'UPDATE') then
                perform refuse_to_others('{StaffOfSalon}');
            end if;
            return case tg_op when 'DELETE' then old else new end;
        end $$;
        create trigger keep_staff before insert or update of salon_id, person_id or delete on person_salons
            for each row execute function keep_staff();

        -- Roles are an owner's to give; a manager hires whom they may manage.
        create function keep_roles() returns trigger language plpgsql security definer set search_path = public as $$
        begin
            if app_role() is not null and not app_all() and (tg_op = 'UPDATE' or new.role in ('Owner', 'Manager')) then
                perform refuse_to_others('{StaffOfSalon}');
            end if;
            return new;
        end $$;
        create trigger keep_roles before insert on people for each row execute function keep_roles();
        create trigger keep_roles_given before update of role on people
            for each row when (old.role is distinct from new.role) execute function keep_roles();
        """;
}
