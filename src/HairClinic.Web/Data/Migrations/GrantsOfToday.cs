using Microsoft.EntityFrameworkCore.Migrations;

namespace HairClinic.Web.Data.Migrations;

/// <summary>Grants for a book that was kept before there were any: each client's home salon, and whoever has them booked.</summary>
public static class GrantsOfToday
{
    public static void Fill(MigrationBuilder migration) =>
        migration.Sql(
            """
            do $$
            declare made bigint;
            begin
                insert into client_grants (practice_id, id, client_id, salon_id, reason, starts_at)
                    select practice_id, gen_random_uuid(), id, home_salon_id, 'Home', 'epoch' from clients;
                get diagnostics made = row_count;
                -- Under forced row security an owner that does not bypass it would silently change nothing.
                if made <> (select count(*) from clients) then
                    raise exception 'only % of the clients got their home grant', made;
                end if;
                insert into client_grants (practice_id, id, client_id, salon_id, reason, starts_at, ends_at)
                    select v.practice_id, gen_random_uuid(), v.client_id, v.salon_id, 'Visit', 'epoch', max(v.ends_at) + 90 * interval '1 day'
                    from visits v join clients c on c.practice_id = v.practice_id and c.id = v.client_id
                    where v.salon_id <> c.home_salon_id and v.state not in ('Cancelled', 'DidNotCome')
                    group by v.practice_id, v.client_id, v.salon_id;
                insert into client_grants (practice_id, id, client_id, person_id, reason, starts_at, ends_at)
                    select v.practice_id, gen_random_uuid(), v.client_id, v.person_id, 'Visit', 'epoch', max(v.ends_at) + 90 * interval '1 day'
                    from visits v join people p on p.practice_id = v.practice_id and p.id = v.person_id
                    where p.role = 'Trainee' and v.state not in ('Cancelled', 'DidNotCome')
                    group by v.practice_id, v.client_id, v.person_id;
            end $$;
            """
        );
}
