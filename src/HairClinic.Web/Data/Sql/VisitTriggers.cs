using HairClinic.Web.Data.Maps;

namespace HairClinic.Web.Data.Sql;

/// <summary>What the database holds of visits beyond its constraints: how far clients book by themselves, who takes turns, and who waits for whose time.</summary>
public static class VisitTriggers
{
    /// <summary>The name under which a client's booking beyond <see cref="SelfBookingRule.MostAhead"/> is refused.</summary>
    public const string MostAhead = "own_visits_ahead";

    public static string Sql { get; } =
        $"""
            -- A client's own bookings wait for each other, so that the last of many at once still counts those before it.
            create function hold_own_bookings() returns trigger language plpgsql security definer set search_path = public as $$
            begin
                if app_role() is distinct from 'Client' or new.state <> 'Booked' or new.starts_at <= app_now()
                   or tg_op = 'UPDATE' and old.state = new.state and old.client_id = new.client_id then
                    return new;
                end if;
                perform pg_advisory_xact_lock(hashtextextended('own bookings of ' || new.client_id, 0));
                if (select count(*) from visits v
                    where v.practice_id = new.practice_id and v.client_id = new.client_id and v.id <> new.id
                      and v.state = 'Booked' and v.starts_at > app_now()) >= {SelfBookingRule.MostAhead} then
                    raise exception 'this client has as many visits ahead as a client may book'
                        using errcode = 'check_violation', constraint = '{MostAhead}';
                end if;
                return new;
            end $$;
            create trigger hold_own_bookings before insert or update of state, client_id on visits
                for each row execute function hold_own_bookings();

            -- Who takes a place (a chair, hands, a client's time) waits for whoever is taking one in this practice. Otherwise rivals for one
            -- gap each write first and then wait for each other: PostgreSQL breaks them off one by one, a second apart.
            create function take_turns() returns trigger language plpgsql as $$
            begin
                perform pg_advisory_xact_lock(hashtextextended('places of ' || new.practice_id, 0));
                return new;
            end $$;
            create trigger take_turns before insert or update of client_id, starts_at, ends_at, holds_client on visits
                for each row when (new.holds_client) execute function take_turns();
            create trigger take_turns
                before insert or update of chair_id, person_id, starts_at, ends_at, holds_chair, holds_hands on visit_segments
                for each row when (new.holds_chair or new.holds_hands) execute function take_turns();

            -- A visit that stands aside for another of its client (see {VisitMap.ClientOnce}) takes the client once the other is out of
            -- the way: called off, over, moved, or of another client again. At the end of the transaction, when all has moved.
            create function retake_client() returns trigger language plpgsql security definer set search_path = public as $$
            declare
                waiting record;
            begin
                for waiting in
                    select v.id, v.client_id, v.starts_at, v.ends_at from visits v
                    where v.practice_id = new.practice_id and v.client_id in (old.client_id, new.client_id) and not v.holds_client
                      and v.state in ('Booked', 'Arrived', 'InChair') and v.ends_at > app_now()
                    order by v.id
                loop
                    begin
                        update visits v set holds_client = true
                            where v.practice_id = new.practice_id and v.id = waiting.id
                              and not exists (select from visits o
                                where o.practice_id = new.practice_id and o.client_id = waiting.client_id and o.holds_client
                                  and o.starts_at < waiting.ends_at and o.ends_at > waiting.starts_at);
                    exception when exclusion_violation or check_violation then
                        -- Somebody booked the client at this very moment, or erased them: it goes on waiting.
                        null;
                    end;
                end loop;
                return null;
            end $$;
            create constraint trigger retake_client after update on visits deferrable initially deferred for each row
                when (old.client_id <> new.client_id or old.holds_client
                    and (not new.holds_client or old.starts_at <> new.starts_at or old.ends_at <> new.ends_at))
                execute function retake_client();
            """;
}
