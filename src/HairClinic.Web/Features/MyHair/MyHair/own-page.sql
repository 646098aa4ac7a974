-- All a client's first page shows, in one statement: it says who acts and answers them, with a column for each property of MyHair.Screen.
-- The client goes through act_as as everywhere; who is gone gets no row, not an error, because questions that share a connection must
-- not break each other. It reads with its owner's rights: the same query through the policies of its ten tables took four times as
-- long, most of it to set up checks that one comparison with the acting client settles, and thousands open this page at the same hour.
-- The row is there only for a client who has not left and a sign-in that was not ended and still opens this page: act_as says so.
create function own_page(own_practice uuid, client uuid, sign_in uuid, at timestamptz)
    returns table (
        name text, salon text, salon_phone text, zone text,
        bond_opens_on date, bond_due_on date, bond_closes_on date, bond_reasons jsonb, bond_applied_at timestamptz, bond_lifted_on date,
        bond_cure_hours int, bond_label_cure_hours int,
        visit_id uuid, visit_starts_at timestamptz, visit_zone text, visit_salon text, visit_state text, visit_move_hours int,
        coming_state text, coming_promised_for date,
        has_photos boolean, has_consents boolean, was_seen boolean, opens_all boolean, is_demo boolean)
    language plpgsql security definer set search_path = public
    -- The same plan whoever asks: to plan the join anew takes longer than to run it.
    set plan_cache_mode = force_generic_plan
    as $$
#variable_conflict use_column
declare
    own_client uuid;
begin
    if sign_in is null then
        return;
    end if;
    begin
        perform act_as(own_practice, 'Client', null, '{}', client, at, sign_in, false);
    exception when sqlstate 'HC001' then
        return;
    end;
    own_client := app_client();
    return query
    select coalesce(c.called_as, c.name)::text, h.name::text, h.phone::text, h.zone::text,
           b.opens_on, b.due_on, b.closes_on, b.due_reasons, b.applied_at,
           case when b.lift_reported_on is not null then coalesce(b.lifted_on, b.lift_latest_on, b.lift_reported_on) end,
           s.cure_hours,
           (select max(p.label_cure_hours) from bond_products u
                join products p on p.practice_id = u.practice_id and p.id = u.product_id
                where u.practice_id = b.practice_id and u.bond_id = b.id),
           v.id, v.starts_at, v.zone::text, v.name::text, v.state::text, s.client_move_hours,
           o.state::text, o.promised_for,
           app_opens_all() and exists (select from photos f
                where f.practice_id = c.practice_id and f.client_id = c.id and f.shared and f.removed_at is null),
           app_opens_all() and exists (select from consents a where a.practice_id = c.practice_id and a.client_id = c.id),
           app_opens_all() and exists (select from access_notes l where l.practice_id = c.practice_id and l.client_id = c.id),
           app_opens_all(), s.is_demo
    from clients c
    join salons h on h.practice_id = c.practice_id and h.id = c.home_salon_id
    join practice_settings s on s.practice_id = c.practice_id
    left join bonds b on b.practice_id = c.practice_id and b.client_id = c.id and b.removed_on is null
    left join lateral (
        select w.id, w.starts_at, p.zone, p.name, w.state
        from visits w join salons p on p.practice_id = w.practice_id and p.id = w.salon_id
        where w.practice_id = c.practice_id and w.client_id = c.id and w.ends_at > at and w.state in ('Booked', 'Arrived')
        order by w.starts_at limit 1) v on true
    left join lateral (
        select u.state, (
            select r.promised_for from promise_revisions r
            where r.practice_id = u.practice_id and r.hair_system_id = u.id order by r.number desc limit 1) as promised_for
        from hair_systems u
        where u.practice_id = c.practice_id and u.client_id = c.id and app_opens_all()
            and u.state in ('Ordered', 'Acknowledged', 'Shipped', 'Arrived', 'Inspected', 'Remake', 'Accepted', 'Prepared')
        order by u.ordered_on desc nulls last, u.id desc limit 1) o on true
    where c.practice_id = own_practice and c.id = own_client;
end $$;
