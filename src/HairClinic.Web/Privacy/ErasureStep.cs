using Microsoft.EntityFrameworkCore.Metadata;

namespace HairClinic.Web.Privacy;

/// <summary>What is done to a table's rows.</summary>
public enum ErasureEffect
{
    TakenOut,
    Emptied,
    CalledOff,
    Renamed,
}

/// <summary>One thing done in an erasure. In its SQL {0} is the ids, {1} the practice, {2} the telling texts, {3} now.</summary>
/// <param name="Where">Which rows; the same for the count beforehand and the erasure itself.</param>
public sealed record ErasureStep(string Table, ErasureEffect Effect, string Where, string Does)
{
    public string Key => $"{Table}: {Effect}";

    public string Count => $"select count(*)::int as \"Value\" from {Table} where practice_id = {{1}} and ({Where})";

    public string Sql => $"{Does} where practice_id = {{1}} and ({Where})";

    private const string Tells = "exists (select from unnest({2}) told where strpos(COLUMN::text, told) > 0)";

    // A letter may be to an address as somebody typed it, or to whoever reads for them.
    private const string Addresses =
        "select lower(email) from clients where id = any({0}) union select lower(email) from guardians where client_id = any({0})";

    // The client's key is destroyed and its row stays, so that no second key is made by accident.
    private static readonly string[] SeenToElsewhere = ["client_keys"];

    public static IReadOnlyList<ErasureStep> Plan(IModel model)
    {
        var tables = ClientTables.FindAll(model).Where(t => !SeenToElsewhere.Contains(t.Name)).ToList();
        var visit = tables.Single(t => t.Name == "visits");
        var ahead = $"({visit.Where}) and state = 'Booked' and starts_at > {{3}}";
        return
        [
            // The texts that tell come first: they are looked for by what the later steps take away.
            Delete("find_words", "subject_id = any({0})"),
            Delete("drafts", $"subject_id = any({{0}}) or subject_id in (select id from visits where {visit.Where}) or {Redacted("body")}"),
            Delete("write_keys", Redacted("answer")),
            Delete("work_items", $"{Redacted("body")} or lower(body->>'To') in ({Addresses})"),
            new(
                "visit_segments",
                ErasureEffect.CalledOff,
                $"visit_id in (select id from visits where {ahead})",
                "update visit_segments set holds_hands = false, holds_chair = false"
            ),
            new(
                "visits",
                ErasureEffect.CalledOff,
                ahead,
                "update visits set state = 'Cancelled', holds_chair = false, holds_client = false"
            ),
            .. tables.Where(t => ErasureExemptions.Find(t.Name) is null).Select(t => Delete(t.Name, t.Where)),
            .. tables.Where(t => ErasureExemptions.Find(t.Name)?.Emptied.Count > 0).Select(Empty),
            // Last, because from then on the database refuses to write anything on them.
            new(
                "clients",
                ErasureEffect.Renamed,
                "id = any({0})",
                """
                update clients set name = 'Erased client', code = 'E-' || upper(substr(replace(gen_random_uuid()::text, '-', ''), 1, 10)),
                    preferred_days = 0, left_on = coalesce(left_on, ({3} at time zone 'UTC')::date), erased_at = {3}
                """
            ),
        ];
    }

    private static string Redacted(string column) => Tells.Replace("COLUMN", column, StringComparison.Ordinal);

    private static ErasureStep Delete(string table, string where) => new(table, ErasureEffect.TakenOut, where, $"delete from {table}");

    private static ErasureStep Empty(ClientTable table)
    {
        var columns = ErasureExemptions.Find(table.Name)!.Emptied;
        return new(
            table.Name,
            ErasureEffect.Emptied,
            $"({table.Where}) and ({string.Join(" or ", columns.Select(c => $"{c} is not null"))})",
            $"update {table.Name} set {string.Join(", ", columns.Select(c => $"{c} = null"))}"
        );
    }
}
