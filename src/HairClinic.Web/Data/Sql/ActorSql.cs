namespace HairClinic.Web.Data.Sql;

/// <summary>How PostgreSQL learns who acts, and checks that they still are who they say.</summary>
public static class ActorSql
{
    /// <summary>The error of somebody who is no longer what they were when they signed in.</summary>
    public const string ChangedState = "HC001";

    /// <remarks>After a pool reset a setting reads as an empty string, not null.</remarks>
    public const string Sql = """
        create function app_setting(name text) returns text language sql stable parallel safe
            as $$ select nullif(current_setting('app.' || name, true), '') $$;
        create function app_all() returns boolean language sql stable parallel safe
            as $$ select coalesce(nullif(current_setting('app.all', true), '')::boolean, false) $$;
        create function app_role() returns text language sql stable parallel safe
            as $$ select nullif(current_setting('app.role', true), '') $$;
        create function app_actor() returns uuid language sql stable parallel safe
            as $$ select nullif(current_setting('app.actor', true), '')::uuid $$;
        create function app_client() returns uuid language sql stable parallel safe
            as $$ select nullif(current_setting('app.client', true), '')::uuid $$;
        create function app_trainee() returns uuid language sql stable parallel safe
            as $$ select nullif(current_setting('app.trainee', true), '')::uuid $$;
        create function app_salons() returns uuid[] language sql stable parallel safe
            as $$ select string_to_array(nullif(current_setting('app.salons', true), ''), ',')::uuid[] $$;
        -- Whether whoever acts reads what clients confided wherever they reach a client; a client does by an address that is confirmed.
        create function app_opens_all() returns boolean language sql stable parallel safe
            as $$ select coalesce(nullif(current_setting('app.opens_all', true), '')::boolean, false) $$;
        create function app_now() returns timestamptz language sql stable parallel safe
            as $$ select coalesce(nullif(current_setting('app.now', true), '')::timestamptz, now()) $$;

        -- The clients whom a grant opens to the actor now. A view reads with its owner's rights, so a policy that asks it does not
        -- bring the policy of the grants with it: under every table of a query, those took longer to set up than the query to run.
        create view opened_clients with (security_barrier) as
            select g.practice_id, g.client_id from client_grants g
            where g.practice_id = nullif(current_setting('app.practice', true), '')::uuid
              and (g.salon_id = any ((select app_salons())::uuid[]) or g.person_id = (select app_trainee()))
              and g.starts_at <= (select app_now()) and (g.ends_at is null or g.ends_at > (select app_now()));
        -- What is written through a view is written with its owner's rights too.
        revoke all on opened_clients from hairclinic_program;
        grant select on opened_clients to hairclinic_program, hairclinic_keeper;

        -- Whether the actor may open a client, past the policies that would ask it in a circle.
        create function app_opens(client uuid) returns boolean language sql stable security definer set search_path = public
            as $$
                select app_all() or client = app_client() or exists (
                    select from client_grants g
                    where g.practice_id = app_setting('practice')::uuid and g.client_id = client
                      and (g.salon_id = any (app_salons()) or g.person_id = app_trainee())
                      and g.starts_at <= app_now() and (g.ends_at is null or g.ends_at > app_now()))
            $$;

        -- Whether the actor works in a client's home salon.
        create function app_at_home(client uuid) returns boolean language sql stable security definer set search_path = public
            as $$
                select exists (select from clients c
                    where c.practice_id = app_setting('practice')::uuid and c.id = client and c.home_salon_id = any (app_salons()))
            $$;

        -- Says who acts, and checks that they still are who they say: called each time a connection is opened, for as long as it stays
        -- open; or, not lasting, in front of a single question, forgotten with its transaction.
        create function act_as(
            practice uuid, role text, actor uuid, salons uuid[], client uuid, at timestamptz, session uuid, lasting boolean)
            returns void language plpgsql security definer set search_path = public as $$
        declare
            is_role text;
            own_salons uuid[];
            kept uuid;
            opens_all boolean := true;
            invited boolean;
        begin
            if role = 'Client' then
                -- Whose page it is says the sign-in; a merge turned it to the record that was kept, or ended it. What is done in a
                -- client's name without one sees their dates only, and follows no merge.
                opens_all := false;
                kept := client;
                if session is not null then
                    select i.client_id, address_opens(practice, i.client_id, i.email, at), i.invitation into kept, opens_all, invited
                        from client_sign_ins i join clients f on f.practice_id = i.practice_id and f.id = client
                        where i.practice_id = practice and i.id = session and i.ended_at is null
                            and i.client_id in (f.id, f.merged_into_id);
                    if opens_all is null then
                        raise exception 'this sign-in has ended' using errcode = 'HC001';
                    end if;
                    -- An invitation opens dates only, whatever its address does: it lay in a mailbox for days.
                    opens_all := opens_all and not invited;
                end if;
                if not exists (select from clients c where c.practice_id = practice and c.id = kept
                        and (c.left_on is null or c.need_ended_because = 'TryingWithout') and c.erased_at is null and c.merged_into_id is null) then
                    raise exception 'this client is not here any more' using errcode = 'HC001';
                end if;
            elsif role <> 'Job' then
                select p.role, array(select s.salon_id from person_salons s where s.practice_id = practice and s.person_id = actor)
                    into is_role, own_salons
                    from people p where p.practice_id = practice and p.id = actor and not p."left";
                if is_role is distinct from role or is_role <> 'Owner' and not salons <@ own_salons then
                    raise exception 'this person works here no more, or as somebody else' using errcode = 'HC001';
                end if;
            end if;
            if role <> 'Client' and session is not null and not exists (
                select from sign_in_sessions i left join sign_in_sessions f on f.id = i.full_id
                where i.id = session and i.practice_id = practice and i.person_id = actor
                    and i.ended_at is null and f.ended_at is null and i.idle_until > at and i.expires_at > at) then
                raise exception 'this sign-in has ended' using errcode = 'HC001';
            end if;
            perform set_config('app.practice', practice::text, not lasting),
                set_config('app.role', role, not lasting),
                set_config('app.actor', coalesce(actor, client)::text, not lasting),
                set_config('app.all', (role in ('Owner', 'Job'))::text, not lasting),
                set_config('app.salons', case when role in ('Manager', 'FrontDesk', 'Stylist') then array_to_string(salons, ',') else '' end, not lasting),
                set_config('app.trainee', case when role = 'Trainee' then actor::text else '' end, not lasting),
                set_config('app.client', coalesce(kept::text, ''), not lasting),
                set_config('app.opens_all', opens_all::text, not lasting),
                set_config('app.now', at::text, not lasting),
                -- Compiling a query takes longer than any of ours runs.
                set_config('jit', 'off', not lasting);
        end $$;
        """;
}
