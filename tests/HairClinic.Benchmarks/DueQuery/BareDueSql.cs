using HairClinic.Web.Features.Wear;

namespace HairClinic.Benchmarks.DueQuery;

/// <summary>The first page and its counts as one would write them by hand: $1 practice, $2 salons, $3 today, $4 soon, $5 when today began.</summary>
internal static class BareDueSql
{
    private const string Visits = """
        from visits v join service_kinds k on k.practice_id = v.practice_id and k.id = v.service_kind_id
        where v.practice_id = $1 and v.client_id = b.client_id and v.starts_at >= $5
          and v.state in ('Booked', 'Arrived', 'InChair') and k.purpose in ('Rebond', 'FirstFitting', 'FixLift')
        """;

    private const string AtRisk = """
        exists (select from reorder_plans p where p.practice_id = $1 and p.client_id = b.client_id and p.at_risk)
        """;

    private const string PutOff = """
        coalesce((select n.until from contact_notes n where n.practice_id = $1 and n.client_id = b.client_id and n.kind = 'PutOff'
            and (b.applied_at is null or n.at >= b.applied_at) order by n.at desc limit 1) > $3, false)
        """;

    private const string Open = """
        from bonds b join clients c on c.practice_id = b.practice_id and c.id = b.client_id
        where b.practice_id = $1 and b.removed_on is null and c.home_salon_id = any ($2) and c.merged_into_id is null and c.left_on is null
        """;

    public const string Salons =
        "select id, name, zone, (select opening_soon_days from practice_settings where practice_id = $1) from salons where practice_id = $1";

    public static readonly string Page = $"""
        with keys as (
            (select 0 as rank, b.closes_on, b.id, {AtRisk} as at_risk {Open}
                and b.lift_reported_on is not null and not exists (select {Visits}) order by b.closes_on, b.id limit {Due.PageSize
            + 1})
            union all
            (select 1, b.closes_on, b.id, {AtRisk} {Open}
                and b.lift_reported_on is null and b.opens_on <= $4 and not exists (select {Visits}) and not {PutOff}
                order by b.closes_on, b.id limit {Due.PageSize + 1})
            order by 1, 2, 3 limit {Due.PageSize + 1})
        select x.id, x.rank, c.id, c.home_salon_id, c.code, c.name, c.called_as, c.phone, b.applied_on, b.opens_on, b.due_on, b.closes_on, b.due_reasons,
            b.lifted_on, b.lift_reported_on, b.lift_zone, n.kind, n.at, n.until, n.reason, v.id, v.salon_id, v.starts_at, v.day, x.at_risk
        from keys x
        join bonds b on b.practice_id = $1 and b.id = x.id
        join clients c on c.practice_id = $1 and c.id = b.client_id
        left join lateral (select n.kind, n.at, n.until, n.reason from contact_notes n
            where n.practice_id = $1 and n.client_id = b.client_id order by n.at desc limit 1) n on true
        left join lateral (select v.id, v.salon_id, v.starts_at, v.day {Visits} order by v.starts_at limit 1) v on true
        order by x.rank, x.closes_on, x.id
        """;

    public static readonly string Counts = $"""
        select part, count(*) from (
            select case when b.lift_reported_on is null and b.opens_on > $4 then 0 when exists (select {Visits}) then 5
                when b.lift_reported_on is not null then 1 when {PutOff} then 6 when b.closes_on < $3 then 2 when b.opens_on <= $3 then 3 else 4 end as part
            from (select b.* {Open} order by b.closes_on, b.id limit {DueCounts.Cap}) b) m
        group by part
        """;

    public const string Risks = """
        select count(*) from reorder_plans p where p.practice_id = $1 and p.at_risk and exists (
            select from clients c where c.practice_id = $1 and c.id = p.client_id and c.home_salon_id = any ($2)
                and c.merged_into_id is null and c.left_on is null)
        """;

    /// <summary>Everything that closes within some days, in order: tens of thousands of rows.</summary>
    public const string Closing = """
        select id, client_id, hair_system_id, applied_on, opens_on, due_on, closes_on from bonds
        where practice_id = $1 and removed_on is null and closes_on >= $2 and closes_on < $3 order by closes_on, id
        """;
}
