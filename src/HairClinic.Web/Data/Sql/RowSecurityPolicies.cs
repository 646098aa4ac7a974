namespace HairClinic.Web.Data.Sql;

/// <summary>The four policies of each fenced table.</summary>
public static class RowSecurityPolicies
{
    private const string InPractice = "practice_id = nullif(current_setting('app.practice', true), '')::uuid";

    /// <summary>Laid first: with row security and no policy yet, a table shows nobody anything.</summary>
    public static string Guard { get; } =
        string.Join(
            "\n",
            AccessRules.All.Select(r => $"alter table {r.Table} enable row level security; alter table {r.Table} force row level security;")
        );

    public static string Sql { get; } = string.Join("\n", AccessRules.All.Select(PoliciesOf));

    private static string PoliciesOf(AccessRule rule) =>
        $"""
            create policy reads on {rule.Table} for select using ({May(rule.Read, rule.Rows)});
            create policy adds on {rule.Table} for insert with check ({May(rule.Add, rule.Written ?? rule.Writes)});
            create policy changes on {rule.Table} for update using ({May(rule.Change, rule.Writes)}) with check ({May(
                rule.Change,
                rule.Written ?? rule.Writes
            )});
            create policy removes on {rule.Table} for delete using ({May(rule.Remove, rule.Writes)});
            """;

    private static string May(AllowedRoles roles, string rows)
    {
        var whoever = roles == AllowedRoles.Everybody ? "" : $" and (select app_role()) = any ('{{{Names(roles)}}}')";
        var reached = rows == RowConditions.Practice ? "" : $" and ({rows})";
        return InPractice + whoever + reached;
    }

    private static string Names(AllowedRoles roles) =>
        string.Join(',', Enum.GetValues<AllowedRoles>().Where(r => r != 0 && int.IsPow2((int)r) && roles.HasFlag(r)));
}
