START TRANSACTION;
ALTER TABLE visits ADD holds_client boolean NOT NULL DEFAULT FALSE;

ALTER TABLE visit_segments ADD chair_id uuid;

ALTER TABLE visit_segments ADD holds_chair boolean NOT NULL DEFAULT FALSE;

CREATE INDEX ix_visit_segments_practice_id_chair_id_starts_at ON visit_segments (practice_id, chair_id, starts_at);

ALTER TABLE visit_segments ADD CONSTRAINT fk_visit_segments_chairs_practice_id_chair_id FOREIGN KEY (practice_id, chair_id) REFERENCES chairs (practice_id, id);

-- A visit of an old book without steps was taken to be one step all the same, wherever it was read.
insert into visit_segments (practice_id, id, visit_id, position, kind, person_id, starts_at, ends_at, holds_hands, holds_chair)
    select v.practice_id, gen_random_uuid(), v.id, 1, 'HandsOn', v.person_id, v.starts_at, v.ends_at, false, false
    from visits v
    where v.holds_chair and not exists (select from visit_segments s where s.practice_id = v.practice_id and s.visit_id = v.id);
update visit_segments s set chair_id = v.chair_id, holds_chair = v.holds_chair and s.kind <> 'ChairFree'
    from visits v where v.practice_id = s.practice_id and v.id = s.visit_id and v.chair_id is not null;
do $$
begin
    if exists (select from visits v where v.holds_chair and v.chair_id is not null and not exists (
        select from visit_segments s
        where s.practice_id = v.practice_id and s.visit_id = v.id and s.chair_id = v.chair_id
          and (s.holds_chair or s.kind = 'ChairFree'))) then
        raise exception 'a visit lost its chair';
    end if;
end $$;
alter table visits drop constraint ex_visits_chair;
alter table visit_segments add constraint ex_visit_segments_chair
    exclude using gist (practice_id with =, chair_id with =, tstzrange(starts_at, ends_at) with &&)
    where (holds_chair);

-- What is past takes nobody's time any more; on an erased client nothing is written.
update visits v set holds_client = true
    where v.state in ('Booked', 'Arrived', 'InChair') and v.ends_at > now()
      and exists (select from clients c where c.practice_id = v.practice_id and c.id = v.client_id and c.erased_at is null);
-- Ids are made in the order of time.
do $$
declare
    later record;
begin
    for later in
        select v.practice_id, v.id, v.client_id, v.starts_at, v.ends_at from visits v
        where v.holds_client and exists (select from visits o
            where o.practice_id = v.practice_id and o.client_id = v.client_id and o.id < v.id and o.holds_client
              and o.starts_at < v.ends_at and o.ends_at > v.starts_at)
        order by v.practice_id, v.id
    loop
        update visits v set holds_client = false
            where v.practice_id = later.practice_id and v.id = later.id
              and exists (select from visits o
                where o.practice_id = v.practice_id and o.client_id = v.client_id and o.id < v.id and o.holds_client
                  and o.starts_at < v.ends_at and o.ends_at > v.starts_at);
    end loop;
end $$;
alter table visits add constraint ex_visits_client
    exclude using gist (practice_id with =, client_id with =, tstzrange(starts_at, ends_at) with &&)
    where (holds_client);

INSERT INTO "__EFMigrationsHistory" (migration_id, product_version)
VALUES ('20261128213336_OnePlaceAtATime', '10.0.15');

COMMIT;

START TRANSACTION;
ALTER TABLE calendar_feeds ADD email text NOT NULL DEFAULT '';

CREATE TABLE opening_addresses (
    practice_id uuid NOT NULL,
    id uuid NOT NULL,
    client_id uuid NOT NULL,
    guardian_id uuid,
    email text NOT NULL,
    entered_at timestamp with time zone NOT NULL,
    entered_by uuid,
    entered_role text,
    confirmed_at timestamp with time zone,
    confirmed_how text,
    confirmed_by uuid,
    denied_at timestamp with time zone,
    ended_at timestamp with time zone,
    ended_by uuid,
    ended_role text,
    told_at timestamp with time zone,
    end_told_at timestamp with time zone,
    link_hash bytea,
    link_expires_at timestamp with time zone,
    CONSTRAINT pk_opening_addresses PRIMARY KEY (practice_id, id),
    CONSTRAINT fk_opening_addresses_clients_practice_id_client_id FOREIGN KEY (practice_id, client_id) REFERENCES clients (practice_id, id)
);

CREATE INDEX ix_calendar_feeds_practice_id_email ON calendar_feeds (practice_id, email);

CREATE INDEX ix_opening_addresses_practice_id_client_id ON opening_addresses (practice_id, client_id);

CREATE UNIQUE INDEX ux_opening_addresses_own ON opening_addresses (practice_id, client_id) WHERE guardian_id is null and ended_at is null;

CREATE INDEX ix_opening_addresses_practice_id_email ON opening_addresses (practice_id, email);

CREATE UNIQUE INDEX ix_opening_addresses_practice_id_link_hash ON opening_addresses (practice_id, link_hash);

CREATE INDEX ix_opening_addresses_untold ON opening_addresses (practice_id) WHERE told_at is null or ended_at is not null and end_told_at is null;

CREATE UNIQUE INDEX ux_opening_addresses_guardian ON opening_addresses (practice_id, guardian_id) WHERE ended_at is null;

alter table opening_addresses enable row level security;
alter table opening_addresses force row level security;
create policy practice on opening_addresses
    using (practice_id = nullif(current_setting('app.practice', true), '')::uuid) with check (practice_id = nullif(current_setting('app.practice', true), '')::uuid);

create trigger not_erased before insert or update on opening_addresses for each row execute function refuse_rows_of_the_erased();

do $$
begin
    -- Under forced row security an owner that does not bypass it would silently change nothing.
    if row_security_active('clients') or row_security_active('opening_addresses') then
        raise exception 'whoever migrates has to step over the fence';
    end if;
    insert into opening_addresses (practice_id, id, client_id, email, entered_at, confirmed_at, confirmed_how, told_at)
        select practice_id, gen_random_uuid(), id, lower(btrim(email)), now(), now(), 'Before', now()
        from clients where btrim(email) <> '' and merged_into_id is null and erased_at is null;
    insert into opening_addresses (practice_id, id, client_id, guardian_id, email, entered_at, confirmed_at, confirmed_how, told_at)
        select g.practice_id, gen_random_uuid(), g.client_id, g.id, lower(g.email), now(), now(), 'Before', now()
        from guardians g join clients c on c.practice_id = g.practice_id and c.id = g.client_id
        where c.erased_at is null;
    update calendar_feeds f set email = coalesce((
        select min(i.email) from client_sign_ins i
        where i.practice_id = f.practice_id and i.client_id = f.client_id and i.opened_at <= f.made_at
          and (i.ended_at is null or i.ended_at >= f.made_at)
        having count(distinct i.email) = 1), '');
    update calendar_feeds set ended_at = now() where email = '' and ended_at is null;
end $$;

INSERT INTO "__EFMigrationsHistory" (migration_id, product_version)
VALUES ('20261128214403_KeepOpeningAddresses', '10.0.15');

COMMIT;

START TRANSACTION;
ALTER TABLE sign_in_links ADD invitation boolean NOT NULL DEFAULT FALSE;

ALTER TABLE client_sign_ins ADD invitation boolean NOT NULL DEFAULT FALSE;

INSERT INTO "__EFMigrationsHistory" (migration_id, product_version)
VALUES ('20261129013003_KnowInvitations', '10.0.15');

COMMIT;

START TRANSACTION;
ALTER TABLE work_items ADD fate text;

ALTER TABLE work_items ADD handed_at timestamp with time zone;

ALTER TABLE work_items ADD held_until timestamp with time zone;

INSERT INTO "__EFMigrationsHistory" (migration_id, product_version)
VALUES ('20261129013956_EndWork', '10.0.15');

COMMIT;

