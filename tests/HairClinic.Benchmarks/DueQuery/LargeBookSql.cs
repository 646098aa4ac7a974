namespace HairClinic.Benchmarks.DueQuery;

/// <summary>The statements that fill a large book. Ids count up, as those of the program do.</summary>
internal static class LargeBookSql
{
    private const string Reasons = """
        jsonb_build_array(
            jsonb_build_object('Rule', 'HoldWindow', 'From', d, 'To', d + 42, 'Amount', 4, 'UpTo', 6),
            jsonb_build_object('Rule', 'TargetFromPrior', 'From', d, 'To', d + 30, 'Amount', 30),
            jsonb_build_object('Rule', 'MovedToOpenDay', 'From', d + 30, 'To', d + 31))
        """;

    public static readonly IReadOnlyList<string> Tables =
    [
        $"""
            insert into clients (practice_id, id, code, name, home_salon_id, phone, preferred_days)
            select @practice, {Id(
                1
            )}, 'C-' || n, 'Client number ' || n, @salon, '+44163296' || lpad((n % 10000)::text, 4, '0'), 0
            from generate_series(1, @count) n
            """,
            // As the trigger on clients would have laid them.
            $"""
            insert into client_grants (practice_id, id, client_id, salon_id, reason, starts_at)
            select @practice, {Id(7)}, {Id(1)}, @salon, 'Home', 'epoch' from generate_series(1, @count) n
            """,
        $"""
            insert into hair_systems (practice_id, id, serial, client_id, unit_kind_id, state, place_salon_id, ordered_on, arrived_on)
            select @practice, {Id(2)}, 'U-' || n, {Id(
                1
            )}, @kind, 'Bonded', @salon, @today - 200, @today - 100 from generate_series(1, @count) n
            """,
        $"""
            insert into hair_systems (practice_id, id, serial, client_id, unit_kind_id, state, place_salon_id, ordered_on)
            select @practice, {Id(3)}, 'S-' || n, {Id(
                1
            )}, @kind, 'Accepted', @salon, @today - 90 from generate_series(3, @count, 3) n
            """,
        $"""
            insert into bonds (practice_id, id, hair_system_id, client_id, applied_on, applied_at, attachment, opens_on, target_on, due_on, closes_on,
                due_reasons, lift_reported_on, lift_spot_fixed)
            select @practice, {Id(4)}, {Id(2)}, {Id(
                1
            )}, d, d + time '11:00', 'Liquid', d + 28, d + 30, d + 31, d + 42, {Reasons},
                case when n % 200 = 1 then @today end, case when n % 200 = 1 then false end
            from (select n, @today - (n * 7 % 60) as d from generate_series(1, @count) n) s
            """,
        $"""
            insert into visits (practice_id, id, client_id, salon_id, service_kind_id, starts_at, ends_at, day, state, holds_chair, holds_client)
            select @practice, {Id(5)}, {Id(
                1
            )}, @salon, @rebond, d + time '10:00', d + time '11:30', d, 'Booked', false, false
            from (select n, @today + 1 + n % 20 as d from generate_series(5, @count, 5) n) s
            """,
        $"""
            insert into contact_notes (practice_id, id, client_id, kind, at, by, until, reason)
            select @practice, {Id(6)}, {Id(
                1
            )}, case when n % 40 = 0 then 'PutOff' else 'Rang' end, now() - interval '1 hour' * (n % 300), @desk,
                case when n % 40 = 0 then @today + 5 end, case when n % 40 = 0 then 'Away' end
            from generate_series(4, @count, 4) n
            """,
    ];

    private static string Id(int table) => $"('019b{table:0000}-0000-7000-8000-' || lpad(to_hex(n), 12, '0'))::uuid";
}
