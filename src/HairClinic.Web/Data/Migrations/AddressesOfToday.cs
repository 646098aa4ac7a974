using Microsoft.EntityFrameworkCore.Migrations;

namespace HairClinic.Web.Data.Migrations;

/// <summary>
/// Addresses of a book that was kept before they were confirmed: those that stand count as confirmed. A calendar that follows carries
/// the address of the only sign-in that can have made it; where that cannot be told it ends, and whoever wants it makes a new one.
/// </summary>
public static class AddressesOfToday
{
    public static void Fill(MigrationBuilder migration) =>
        migration.Sql(
            """
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
            """
        );
}
