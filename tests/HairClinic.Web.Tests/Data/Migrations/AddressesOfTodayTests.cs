using HairClinic.Web.Data;
using HairClinic.Web.Tests.EmbeddedPostgres;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Tests.Data.Migrations;

/// <summary>A book that was kept before addresses were confirmed, brought up to date.</summary>
public sealed class AddressesOfTodayTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Addresses_that_stand_count_as_confirmed_and_a_calendar_whose_maker_cannot_be_told_ends()
    {
        await using var book = await EarlierBook.LayAsync(server, "the-five");
        await Sql.AskAsync(
            book.Migrator,
            """
            insert into practices (id) values ('00000000-0000-0000-0000-000000000001');
            insert into salons select * from jsonb_populate_record(null::salons, jsonb_build_object(
                'practice_id', '00000000-0000-0000-0000-000000000001', 'id', '00000000-0000-0000-0000-0000000000a1',
                'name', 'Elm Row', 'zone', 'Europe/London', 'currency', 'GBP', 'retired', false));
            insert into clients (practice_id, id, code, name, home_salon_id, preferred_days, email, merged_into_id)
                select '00000000-0000-0000-0000-000000000001', id::uuid, code, code, '00000000-0000-0000-0000-0000000000a1', 0, email, into_id::uuid
                from (values
                    ('00000000-0000-0000-0000-0000000000c1', 'C-1', ' Ada@Example.test ', null),
                    ('00000000-0000-0000-0000-0000000000c2', 'C-2', null, null),
                    ('00000000-0000-0000-0000-0000000000c3', 'C-3', 'folded@example.test', '00000000-0000-0000-0000-0000000000c1')
                ) as v(id, code, email, into_id);
            insert into guardians (practice_id, id, client_id, name, email) values
                ('00000000-0000-0000-0000-000000000001', gen_random_uuid(), '00000000-0000-0000-0000-0000000000c2', 'Cleo', 'cleo@example.test');
            insert into client_sign_ins (practice_id, id, client_id, email, opened_at, ended_at)
                select '00000000-0000-0000-0000-000000000001', gen_random_uuid(), client::uuid, email, opened::timestamptz, ended::timestamptz
                from (values
                    ('00000000-0000-0000-0000-0000000000c1', 'ada@example.test', '2026-01-01', null),
                    ('00000000-0000-0000-0000-0000000000c1', 'gone@example.test', '2026-01-01', '2026-02-01'),
                    ('00000000-0000-0000-0000-0000000000c2', 'cleo@example.test', '2026-01-01', null),
                    ('00000000-0000-0000-0000-0000000000c2', 'other@example.test', '2026-01-01', null)
                ) as v(client, email, opened, ended);
            insert into calendar_feeds (practice_id, id, client_id, secret_hash, made_at)
                select '00000000-0000-0000-0000-000000000001', gen_random_uuid(), client::uuid, secret::bytea, '2026-03-01'
                from (values ('00000000-0000-0000-0000-0000000000c1', '\x01'), ('00000000-0000-0000-0000-0000000000c2', '\x02')) as v(client, secret);
            """
        );

        await SchemaMigrator.MigrateAsync(book.Migrator, Cancel);

        await using var now = book.Open();
        var addresses = await now.OpeningAddresses.IgnoreQueryFilters().OrderBy(a => a.Email).ToListAsync(Cancel);
        Assert.Equal(
            [("ada@example.test", false), ("cleo@example.test", true)],
            addresses.Select(a => (a.Email, a.GuardianId is not null))
        );
        Assert.All(
            addresses,
            a => Assert.Equal((Domain.Clients.ClientPageAccessLevel.Everything, Domain.Clients.AddressConfirmationWay.Before), (a.Opens, a.ConfirmedHow))
        );
        Assert.All(addresses, a => Assert.NotNull(a.ToldAt));
        var feeds = await now.CalendarFeeds.IgnoreQueryFilters().OrderBy(f => f.SecretHash).ToListAsync(Cancel);
        Assert.Equal([("ada@example.test", true), ("", false)], feeds.Select(f => (f.Email, f.EndedAt is null)));
    }
}
