using System.Security.Cryptography;
using System.Text;

namespace HairClinic.Web.Practices.Access;

/// <summary>
/// The fence as one text: functions, triggers, and four policies for each fenced table. It is laid anew whenever it differs from
/// what was laid last, so a rule is changed in one place and needs no migration.
/// </summary>
public static class AccessPolicies
{
    private const string InPractice = "practice_id = nullif(current_setting('app.practice', true), '')::uuid";

    public static string Sql { get; } =
        string.Join(
            "\n",
            [
                ActorFunctions.Sql,
                OpeningTriggers.Sql,
                OwnPageFunction.Sql,
                GrantTriggers.Sql,
                DropAll,
                .. AccessRules.All.Select(PoliciesOf),
            ]
        );

    /// <summary>What tells one version of the fence from another.</summary>
    public static string Mark { get; } = "fence " + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Sql)));

    private const string DropAll = """
        do $$
        declare p record;
        begin
            for p in select tablename, policyname from pg_policies where schemaname = 'public' loop
                execute format('drop policy %I on %I', p.policyname, p.tablename);
            end loop;
        end $$;
        """;

    private static string PoliciesOf(AccessRule rule) =>
        $"""
            alter table {rule.Table} enable row level security;
            alter table {rule.Table} force row level security;
            create policy reads on {rule.Table} for select using ({May(rule.Read, rule.Rows)});
            create policy adds on {rule.Table} for insert with check ({May(rule.Add, rule.Writes)});
            create policy changes on {rule.Table} for update using ({May(rule.Change, rule.Writes)}) with check ({May(
                rule.Change,
                rule.Writes
            )});
            create policy removes on {rule.Table} for delete using ({May(rule.Remove, rule.Writes)});
            """;

    private static string May(Roles roles, string rows)
    {
        var whoever = roles == Roles.Everybody ? "" : $" and (select app_role()) = any ('{{{Names(roles)}}}')";
        var reached = rows == Reach.Practice ? "" : $" and ({rows})";
        return InPractice + whoever + reached;
    }

    private static string Names(Roles roles) =>
        string.Join(',', Enum.GetValues<Roles>().Where(r => r != 0 && int.IsPow2((int)r) && roles.HasFlag(r)));
}
