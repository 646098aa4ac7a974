namespace HairClinic.Web.Data.Sql;

/// <summary>
/// A client's address is their key. Whoever changes one, by whatever screen, import, merge or statement: the database makes the new
/// address a row that opens dates only, ends what came by the old one, and lets nobody confirm what they entered themselves.
/// </summary>
/// <remarks>The rule for people is <see cref="Domain.Clients.AddressConfirmationRights"/>; here it holds against a screen that forgets it.</remarks>
public static class OpeningAddressTriggers
{
    public const string Sql = """
        -- How far an address opens a client's page: null nothing, false dates only, true everything.
        create function address_opens(practice uuid, client uuid, address text, at timestamptz) returns boolean
            language plpgsql stable security definer set search_path = public
            -- Asked at each opening of a client's page: a plan of its own is kept, where plain SQL would be planned anew.
            set plan_cache_mode = force_generic_plan
            as $$
        begin
            return (
                select bool_or(a.confirmed_at is not null)
                from opening_addresses a
                left join guardians g on g.practice_id = a.practice_id and g.id = a.guardian_id
                where a.practice_id = practice and a.client_id = client and a.email = address
                  and a.ended_at is null and (a.denied_at is null or a.confirmed_at is not null)
                  and (g.ends_on is null or g.ends_on >= (
                      select (at at time zone s.zone)::date from clients c
                      join salons s on s.practice_id = c.practice_id and s.id = c.home_salon_id
                      where c.practice_id = a.practice_id and c.id = a.client_id)));
        end $$;

        -- Whether somebody else who works in the client's home salon and can sign in reads what they confided, and so could confirm their
        -- address.
        create function others_may_confirm(client uuid, but uuid) returns boolean
            language sql stable security definer set search_path = public
            as $$
                select exists (
                    select from people p join users u on u.practice_id = p.practice_id and u.person_id = p.id
                    where p.practice_id = app_setting('practice')::uuid and p.id <> but and not p."left"
                      and (p.role = 'Owner' or p.role in ('Manager', 'Stylist') and exists (
                          select from clients c join person_salons s on s.practice_id = c.practice_id and s.salon_id = c.home_salon_id
                          where c.practice_id = p.practice_id and c.id = client and s.person_id = p.id)))
            $$;

        -- What the old address said no to stays denied, however often it is entered.
        create function begin_opening(practice uuid, client uuid, guardian uuid, address text)
            returns void language plpgsql security definer set search_path = public as $$
        begin
            insert into opening_addresses (practice_id, id, client_id, guardian_id, email, entered_at, entered_by, entered_role, denied_at)
                values (practice, gen_random_uuid(), client, guardian, address, app_now(), app_actor(), app_role(), (
                    select max(a.denied_at) from opening_addresses a
                    where a.practice_id = practice and a.client_id = client and a.email = address and a.confirmed_at is null));
        end $$;

        create function end_opening(practice uuid, client uuid, guardian uuid, address text)
            returns void language plpgsql security definer set search_path = public as $$
        begin
            update opening_addresses a
                set ended_at = app_now(), ended_by = app_actor(), ended_role = app_role(), link_hash = null, link_expires_at = null
                where a.practice_id = practice and a.client_id = client and a.guardian_id is not distinct from guardian and a.ended_at is null;
            update client_sign_ins i set ended_at = app_now()
                where i.practice_id = practice and i.client_id = client and i.email = address and i.ended_at is null;
            update sign_in_links l set used_at = app_now()
                where l.practice_id = practice and l.client_id = client and lower(l.email) = address and l.used_at is null;
            update calendar_feeds f set ended_at = app_now()
                where f.practice_id = practice and f.client_id = client and f.email = address and f.ended_at is null;
        end $$;

        create function keep_own_address() returns trigger language plpgsql security definer set search_path = public as $$
        declare
            was text := case when tg_op = 'UPDATE' then nullif(lower(btrim(old.email)), '') end;
            becomes text := nullif(lower(btrim(new.email)), '');
        begin
            if was is distinct from becomes then
                if was is not null then
                    perform end_opening(new.practice_id, new.id, null, was);
                end if;
                if becomes is not null then
                    perform begin_opening(new.practice_id, new.id, null, becomes);
                end if;
            end if;
            return null;
        end $$;
        create trigger keep_own_address after insert or update of email on clients
            for each row execute function keep_own_address();

        -- A guardian who is moved to another record, or whose time is prolonged, is entered anew.
        create function keep_guardian_address() returns trigger language plpgsql security definer set search_path = public as $$
        begin
            if tg_op = 'UPDATE' and (old.client_id, lower(old.email)) = (new.client_id, lower(new.email))
               and not (old.ends_on is not null and (new.ends_on is null or new.ends_on > old.ends_on)) then
                return null;
            end if;
            if tg_op <> 'INSERT' then
                perform end_opening(old.practice_id, old.client_id, old.id, lower(old.email));
            end if;
            if tg_op <> 'DELETE' then
                perform begin_opening(new.practice_id, new.client_id, new.id, lower(new.email));
            end if;
            return null;
        end $$;
        create trigger keep_guardian_address after insert or update or delete on guardians
            for each row execute function keep_guardian_address();

        -- What began as an invitation stays one.
        create function keep_invitation() returns trigger language plpgsql as $$
        begin
            raise exception 'an invitation opens dates only' using errcode = 'insufficient_privilege';
        end $$;
        create trigger keep_invitation before update of invitation on client_sign_ins
            for each row when (old.invitation and not new.invitation) execute function keep_invitation();
        create trigger keep_invitation before update of invitation on sign_in_links
            for each row when (old.invitation and not new.invitation) execute function keep_invitation();

        -- Two records become one. A sign-in of the one that was folded goes on only by an address that is confirmed at the one that was
        -- kept. And what the folded one confided is read with the kept one from now on: a merge by somebody who may not read that
        -- themselves leaves confirmed only what was confirmed at both.
        create function keep_merged_addresses() returns trigger language plpgsql security definer set search_path = public as $$
        begin
            if new.merged_into_id is null then
                if nullif(btrim(new.email), '') is not null then
                    perform end_opening(new.practice_id, new.id, null, lower(btrim(new.email)));
                    perform begin_opening(new.practice_id, new.id, null, lower(btrim(new.email)));
                end if;
                return null;
            end if;
            -- A link to confirm was sent about one record, and would open two.
            update opening_addresses a set link_hash = null, link_expires_at = null
                where a.practice_id = new.practice_id and a.client_id in (new.id, new.merged_into_id) and a.link_hash is not null;
            if coalesce(app_role(), 'Job') not in ('Owner', 'Manager', 'Stylist', 'Job') then
                update opening_addresses a set confirmed_at = null, confirmed_by = null, confirmed_how = null
                    where a.practice_id = new.practice_id and a.client_id = new.merged_into_id and a.confirmed_at is not null
                      and not exists (select from opening_addresses f
                          where f.practice_id = a.practice_id and f.client_id = new.id and f.email = a.email
                            and f.confirmed_at is not null and f.ended_at is null and a.ended_at is null);
            end if;
            update client_sign_ins i set client_id = new.merged_into_id
                where i.practice_id = new.practice_id and i.client_id = new.id and i.ended_at is null
                  and address_opens(new.practice_id, new.merged_into_id, i.email, app_now());
            update client_sign_ins i set ended_at = app_now()
                where i.practice_id = new.practice_id and i.client_id = new.id and i.ended_at is null;
            if nullif(btrim(new.email), '') is not null then
                perform end_opening(new.practice_id, new.id, null, lower(btrim(new.email)));
            end if;
            return null;
        end $$;
        create trigger keep_merged_addresses after update of merged_into_id on clients
            for each row when (old.merged_into_id is distinct from new.merged_into_id) execute function keep_merged_addresses();

        -- Nobody confirms what they entered; the old address confirms and denies by the link that was sent to it, which jobs look after.
        create function guard_opening_address() returns trigger language plpgsql as $$
        declare
            is_job boolean := app_role() = 'Job';
        begin
            -- The functions above write with their owner's rights.
            if current_user = (select pg_get_userbyid(relowner) from pg_class where oid = tg_relid) then
                return new;
            end if;
            if (new.practice_id, new.id, new.client_id, new.guardian_id, new.email, new.entered_at, new.entered_by, new.entered_role,
                    new.ended_at, new.ended_by, new.ended_role)
               is distinct from (old.practice_id, old.id, old.client_id, old.guardian_id, old.email, old.entered_at, old.entered_by,
                    old.entered_role, old.ended_at, old.ended_by, old.ended_role)
               or not is_job and (new.denied_at, new.told_at, new.end_told_at) is distinct from (old.denied_at, old.told_at, old.end_told_at)
               or not is_job and new.link_hash is not null and new.link_hash is distinct from old.link_hash
               or not is_job and new.link_expires_at is not null and new.link_expires_at is distinct from old.link_expires_at then
                raise exception 'an address is entered and ended by the book itself' using errcode = 'insufficient_privilege';
            end if;
            if (new.confirmed_at, new.confirmed_by, new.confirmed_how, new.denied_at)
               is not distinct from (old.confirmed_at, old.confirmed_by, old.confirmed_how, old.denied_at) then
                return new;
            end if;
            if old.ended_at is null and (case
                when is_job and app_actor() is null and new.confirmed_how = 'Before' then true
                when is_job then
                    old.link_hash is not null and old.link_expires_at > app_now()
                    and (new.confirmed_how = 'OldAddress' or new.confirmed_at is null and new.denied_at is not null)
                when new.confirmed_at is null or new.confirmed_by is distinct from app_actor() or not app_keeps(old.client_id) then false
                when new.confirmed_how = 'InPerson' then old.entered_by is distinct from app_actor()
                when new.confirmed_how = 'OwnerAlone' then
                    app_role() = 'Owner' and not others_may_confirm(old.client_id, app_actor())
                else false end) then
                return new;
            end if;
            raise exception 'who entered an address, or is not of the home salon, does not confirm it' using errcode = 'insufficient_privilege';
        end $$;
        create trigger guard_opening_address before update on opening_addresses
            for each row execute function guard_opening_address();
        """;
}
