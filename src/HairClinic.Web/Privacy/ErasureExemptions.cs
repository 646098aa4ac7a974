namespace HairClinic.Web.Privacy;

/// <summary>
/// What stays when a client is erased, and why. Whatever is not named here goes: a table that is new and forgotten is
/// emptied of the client, never kept by mistake.
/// </summary>
public static class ErasureExemptions
{
    /// <summary>Goes up with every change of what follows; each erasure notes under which edition it was done.</summary>
    public const string Version = "4";

    public const string MoneyAndSafety = "What the law on money and product safety needs";
    public const string Proof = "Proof of what was agreed and done; it names nobody";

    /// <summary>Tables that keep their rows. Columns set to null are emptied; every other text is a word of ours or a number.</summary>
    public static readonly IReadOnlyList<Kept> Stays =
    [
        new(
            "clients",
            MoneyAndSafety,
            ["called_as", "phone", "email", "birth_date", "note", "wash_every_days", "need_ended_because"],
            ["name", "code"]
        ),
        new("visits", MoneyAndSafety, ["note", "book_key"], ["state"]),
        new("visit_segments", MoneyAndSafety, [], ["kind"]),
        new("visit_records", MoneyAndSafety, ["note"], ["lift_zone", "lifted_since", "worn_out_since"]),
        new(
            "hair_systems",
            MoneyAndSafety,
            ["retired_because", "order_note", "spot"],
            ["currency", "serial", "state", "origin", "place", "cleaning", "end_condition", "end_worn_out_since"]
        ),
        new("unit_repairs", MoneyAndSafety, ["note", "sent_to"], ["kind", "currency"]),
        new("promise_revisions", MoneyAndSafety, ["said_by"], []),
        new("unit_loans", MoneyAndSafety, [], []),
        new("take_down_products", MoneyAndSafety, [], []),
        new("bonds", MoneyAndSafety, [], ["attachment", "due_reasons", "removed_because", "lift_zone"]),
        new("bond_products", MoneyAndSafety, [], []),
        new("client_grants", "Who may open what stays", ["note"], ["reason"]),
        new("client_merges", Proof, [], ["moved"]),
        new("consents", Proof, [], ["subject", "way"]),
        new("erasures", Proof, [], ["counts", "rule_version"]),
        new("access_notes", Proof, [], ["actor_kind", "role", "deed", "reason", "key_id", "previous_hash", "hash"]),
        new("client_keys", "The key itself is destroyed; the row says so", [], ["wrapped", "master_key_id"]),
    ];

    public static Kept? Find(string table) => Stays.FirstOrDefault(k => k.Table == table);

    /// <param name="Emptied">Columns set to null.</param>
    /// <param name="Harmless">Texts that stay, or are rewritten, because they identify nobody.</param>
    public sealed record Kept(string Table, string Why, IReadOnlyList<string> Emptied, IReadOnlyList<string> Harmless);
}
