using HairClinic.Domain.Visits;
using NodaTime;
using Npgsql;

namespace HairClinic.BookingDrill;

/// <summary>Looks by plain SQL, past the fence and past every flag, for what must never be.</summary>
internal sealed class Checker(Clinic clinic, Ledger ledger)
{
    private const string Kept = "v.state not in ('Cancelled', 'DidNotCome')";
    private const string Parts = $"""
        select s.visit_id, v.chair_id, v.person_id, s.kind, s.starts_at, s.ends_at
        from visit_segments s join visits v on v.practice_id = s.practice_id and v.id = s.visit_id where {Kept}
        """;

    private static readonly (string What, string Sql)[] Never =
    [
        ("chair overlaps", Overlaps("chair_id", "kind <> 'ChairFree'")),
        ("hand overlaps", Overlaps("person_id", "kind = 'HandsOn' or ends_at - starts_at < interval '10 minutes'")),
        (
            "client overlaps",
            """
            select count(*) from visits a join visits b on b.client_id = a.client_id and b.id > a.id
            where a.state in ('Booked', 'Arrived', 'InChair') and b.state in ('Booked', 'Arrived', 'InChair')
              and a.starts_at < b.ends_at and b.starts_at < a.ends_at
            """
        ),
        (
            "visits that hold what they gave back, or not what they have",
            """
            select count(*) from visits v where v.holds_client <> (v.state = 'Booked')
              or exists (select from visit_segments s where s.visit_id = v.id
                 and s.holds_chair <> (v.state = 'Booked' and s.kind <> 'ChairFree'))
            """
        ),
        ("visits without steps", "select count(*) from visits v where not exists (select from visit_segments s where s.visit_id = v.id)"),
    ];

    /// <summary>The most visits ahead that any client has whom nobody but they themselves book.</summary>
    public async Task<long> MostAheadAsync()
    {
        await using var command = clinic.Sql.CreateCommand(
            """
            select coalesce(max(n), 0) from (select count(*) n from visits
                where client_id = any ($1) and state = 'Booked' and starts_at > now() group by client_id) ahead
            """
        );
        command.Parameters.Add(new NpgsqlParameter<Guid[]> { TypedValue = [.. clinic.Alone.Select(c => c.Id)] });
        return (long)(await command.ExecuteScalarAsync())!;
    }

    /// <summary>What must never be, at any moment.</summary>
    public async Task<List<string>> NeverAsync()
    {
        List<string> wrong = [];
        foreach (var (what, sql) in Never)
        {
            await using var command = clinic.Sql.CreateCommand(sql);
            var count = (long)(await command.ExecuteScalarAsync())!;
            if (count > 0)
                wrong.Add($"{count} {what}");
        }
        if (await MostAheadAsync() is > SelfBookingRule.MostAhead and var most)
            wrong.Add($"{most} visits ahead that a client booked alone");
        return wrong;
    }

    /// <summary>Whether every acknowledged write is there exactly once: to be asked when nobody writes.</summary>
    public async Task<List<string>> AcknowledgedAsync()
    {
        List<string> wrong = [];
        var keys = await KeysAsync();
        var visits = await VisitsAsync();
        foreach (var (key, act) in ledger.Acknowledged)
        {
            if (!keys.TryGetValue(key, out var found))
                wrong.Add($"{act.Deed} was acknowledged and is not there");
            else if (found.Deed != act.Deed)
                wrong.Add($"{act.Deed} was acknowledged and is kept as {found.Deed}");
            if (act.Visit is { } visit && !visits.ContainsKey(visit))
                wrong.Add($"{act.Deed}: its visit is not there");
            if (act is { CalledOff: true, Visit: { } off } && visits.TryGetValue(off, out var row) && row.State != "Cancelled")
                wrong.Add($"{act.Deed} was acknowledged and the visit is {row.State}");
        }
        // A booking is a key and a visit, made together: as many of one as of the other, for each client.
        var booked = ledger.Bookings.Where(b => keys.ContainsKey(b.Key)).CountBy(b => b.Value).ToDictionary();
        foreach (var client in clinic.Shared.Concat(clinic.Alone))
        {
            var (sent, there) = (booked.GetValueOrDefault(client.Id), visits.Values.Count(v => v.Client == client.Id));
            if (sent != there)
                wrong.Add($"{client.Code}: {sent} bookings were made and {there} visits are there");
        }
        // Whoever wrote later had seen what was written before.
        var kept = ledger.Placed.Where(p => keys.ContainsKey(p.Key)).Select(p => (p.Value.Visit, keys[p.Key].At, p.Value.Start));
        foreach (var of in kept.GroupBy(p => p.Visit))
        {
            var last = of.MaxBy(p => p.At).Start;
            if (visits.TryGetValue(of.Key, out var row) && row.StartsAt != last)
                wrong.Add($"a visit is at {row.StartsAt} and was put to {last} last");
        }
        return wrong;
    }

    private async Task<Dictionary<Guid, (string Deed, Instant At)>> KeysAsync()
    {
        await using var command = clinic.Sql.CreateCommand("select id, deed, at from write_keys");
        await using var reader = await command.ExecuteReaderAsync();
        Dictionary<Guid, (string, Instant)> keys = [];
        while (await reader.ReadAsync())
            keys.Add(reader.GetGuid(0), (reader.GetString(1), Instant.FromDateTimeUtc(reader.GetDateTime(2))));
        return keys;
    }

    private async Task<Dictionary<Guid, (Guid Client, string State, Instant StartsAt)>> VisitsAsync()
    {
        await using var command = clinic.Sql.CreateCommand("select id, client_id, state, starts_at from visits");
        await using var reader = await command.ExecuteReaderAsync();
        Dictionary<Guid, (Guid, string, Instant)> visits = [];
        while (await reader.ReadAsync())
            visits.Add(reader.GetGuid(0), (reader.GetGuid(1), reader.GetString(2), Instant.FromDateTimeUtc(reader.GetDateTime(3))));
        return visits;
    }

    private static string Overlaps(string by, string takes) =>
        $"""
            with parts as (select * from ({Parts}) p where {takes})
            select count(*) from parts a join parts b on b.{by} = a.{by} and b.visit_id > a.visit_id
            where a.starts_at < b.ends_at and b.starts_at < a.ends_at
            """;
}
