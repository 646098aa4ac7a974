using System.Text.Json;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Wear;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Practices;
using HairClinic.Web.Practices.Access;
using NodaTime;
using Npgsql;

namespace HairClinic.Web.Data.Books;

/// <summary>
/// All a client's first page shows, in one round trip: the first statement says who is acting, the second brings one row.
/// Thousands of clients open this page at the same hour of the morning, so it is the one page with a query by hand.
/// </summary>
public sealed class OwnPageBook(ClinicDatabase database)
{
    // The row is there only for a client who has not left and a sign-in that was not ended and still opens this page.
    private const string Sql = """
        select coalesce(c.called_as, c.name), h.name, h.phone, h.zone, s.cure_hours, s.client_move_hours,
               b.applied_on, b.applied_at, b.opens_on, b.due_on, b.closes_on, b.due_reasons::text,
               case when b.lift_reported_on is not null then coalesce(b.lifted_on, b.lift_reported_on) end,
               (select max(p.label_cure_hours) from bond_products u
                    join products p on p.practice_id = u.practice_id and p.id = u.product_id
                    where u.practice_id = b.practice_id and u.bond_id = b.id),
               v.id, v.starts_at, v.zone, v.name, v.state,
               o.state, o.promised_for,
               exists (select from photos f
                    where f.practice_id = c.practice_id and f.client_id = c.id and f.shared and f.removed_at is null),
               exists (select from consents a where a.practice_id = c.practice_id and a.client_id = c.id),
               exists (select from access_notes l where l.practice_id = c.practice_id and l.client_id = c.id)
        from clients c
        join salons h on h.practice_id = c.practice_id and h.id = c.home_salon_id
        join practice_settings s on s.practice_id = c.practice_id
        left join bonds b on b.practice_id = c.practice_id and b.client_id = c.id and b.removed_on is null
        left join lateral (
            select w.id, w.starts_at, p.zone, p.name, w.state
            from visits w join salons p on p.practice_id = w.practice_id and p.id = w.salon_id
            where w.practice_id = c.practice_id and w.client_id = c.id and w.ends_at > $3 and w.state in ('Booked', 'Arrived')
            order by w.starts_at limit 1) v on true
        left join lateral (
            select u.state, (
                select r.promised_for from promise_revisions r
                where r.practice_id = u.practice_id and r.hair_system_id = u.id order by r.number desc limit 1) as promised_for
            from hair_systems u
            where u.practice_id = c.practice_id and u.client_id = c.id
                and u.state in ('Ordered', 'Acknowledged', 'Shipped', 'Arrived', 'Inspected', 'Remake', 'Accepted', 'Prepared')
            order by u.ordered_on desc nulls last, u.id desc limit 1) o on true
        where c.practice_id = $1 and c.id = $2 and c.left_on is null and c.merged_into_id is null
            and ($4 is null or exists (
                select from client_sign_ins i
                where i.practice_id = c.practice_id and i.id = $4 and i.client_id = c.id and i.ended_at is null
                    and (i.email = lower(c.email) or exists (
                        select from guardians g where g.practice_id = c.practice_id and g.client_id = c.id and g.email = i.email
                            and (g.ends_on is null or g.ends_on >= ($3 at time zone h.zone)::date)))))
        """;

    private string? _connection;

    /// <returns>Null when there is no such client any more, or the sign-in was ended.</returns>
    public async Task<OwnPageFacts?> ReadAsync(ClientActor actor, Instant now, CancellationToken cancellation)
    {
        await using var connection = new NpgsqlConnection(_connection ??= ClinicConnections.Preparing(database.Connections.Program));
        await connection.OpenAsync(cancellation);
        await using var batch = new NpgsqlBatch(connection) { BatchCommands = { ActorStatement.InBatch(actor, now), Ask(actor, now) } };
        try
        {
            await using var reader = await batch.ExecuteReaderAsync(cancellation);
            await reader.NextResultAsync(cancellation);
            return await reader.ReadAsync(cancellation) ? Facts(reader) : null;
        }
        catch (PostgresException e) when (e.SqlState == ActorFunctions.ChangedState)
        {
            return null;
        }
    }

    private static NpgsqlBatchCommand Ask(ClientActor actor, Instant now) =>
        new(Sql)
        {
            Parameters =
            {
                new NpgsqlParameter<Guid> { TypedValue = actor.PracticeId },
                new NpgsqlParameter<Guid> { TypedValue = actor.ClientId },
                new NpgsqlParameter<DateTime> { TypedValue = now.ToDateTimeUtc() },
                new NpgsqlParameter<Guid?> { TypedValue = actor.SignInId },
            },
        };

    private static OwnPageFacts Facts(NpgsqlDataReader row) =>
        new(row.GetString(0), row.GetString(1), Text(row, 2), row.GetString(3), row.GetInt32(4), row.GetInt32(5))
        {
            Bond = row.IsDBNull(6)
                ? null
                : new OwnBondFacts(
                    Day(row, 6)!.Value,
                    row.IsDBNull(7) ? null : Moment(row, 7),
                    Day(row, 8)!.Value,
                    Day(row, 9)!.Value,
                    Day(row, 10)!.Value,
                    JsonSerializer.Deserialize<List<DueReason>>(row.GetString(11), JsonColumns.Options)!,
                    Day(row, 12),
                    row.IsDBNull(13) ? null : row.GetInt32(13)
                ),
            Visit = row.IsDBNull(14)
                ? null
                : new OwnVisitFacts(row.GetGuid(14), Moment(row, 15), row.GetString(16), row.GetString(17), row.GetString(18) == "Arrived"),
            Coming = row.IsDBNull(19) ? null : new OwnUnitFacts(Enum.Parse<UnitState>(row.GetString(19)), Day(row, 20)),
            HasPhotos = row.GetBoolean(21),
            HasConsents = row.GetBoolean(22),
            WasSeen = row.GetBoolean(23),
        };

    private static string? Text(NpgsqlDataReader row, int column) => row.IsDBNull(column) ? null : row.GetString(column);

    private static LocalDate? Day(NpgsqlDataReader row, int column) =>
        row.IsDBNull(column) ? null : LocalDate.FromDateOnly(row.GetFieldValue<DateOnly>(column));

    private static Instant Moment(NpgsqlDataReader row, int column) => Instant.FromDateTimeUtc(row.GetDateTime(column));
}
