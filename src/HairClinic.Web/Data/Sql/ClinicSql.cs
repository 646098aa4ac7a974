namespace HairClinic.Web.Data.Sql;

/// <summary>
/// All of the schema that is written by hand, as one text: who may touch which table, functions, triggers, policies. It is laid anew
/// whenever it differs from what was laid last, so a rule is changed in one place and needs no migration. Tables, indexes and
/// constraints are the migrations'.
/// </summary>
public static class ClinicSql
{
    public static string Text { get; } =
        string.Join(
            "\n",
            [
                DropAll,
                TablePrivileges.Sql,
                RowSecurityPolicies.Guard,
                ActorSql.Sql,
                OpeningAddressTriggers.Sql,
                ReadEmbeddedScript("own-page.sql"),
                ClientGrantTriggers.Sql,
                HomeSalonRules.Sql,
                NeedEndTriggers.Sql,
                VisitTriggers.Sql,
                ErasedClientGuardTriggers.Sql,
                AppendOnlyTables.Sql,
                RowSecurityPolicies.Sql,
                FunctionPrivileges.Sql,
            ]
        );

    /// <summary>What tells one version of it from another.</summary>
    public static string Mark { get; } = "fence " + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Text)));

    /// <summary>What lies beside the code as a file of its own.</summary>
    internal static string ReadEmbeddedScript(string name)
    {
        using var text = new StreamReader(typeof(ClinicSql).Assembly.GetManifestResourceStream(name)!);
        return text.ReadToEnd();
    }

    // What is taken out of the text goes from the database too. Policies ask functions, and a view does: they go first.
    private const string DropAll = """
        do $$
        declare d record;
        begin
            for d in select tablename, policyname from pg_policies where schemaname = 'public' loop
                execute format('drop policy %I on %I', d.policyname, d.tablename);
            end loop;
            for d in select t.tgname, c.relname from pg_trigger t
                join pg_class c on c.oid = t.tgrelid join pg_namespace n on n.oid = c.relnamespace
                where n.nspname = 'public' and not t.tgisinternal
            loop
                execute format('drop trigger %I on %I', d.tgname, d.relname);
            end loop;
            drop view if exists opened_clients;
            for d in select p.oid::regprocedure as function from pg_proc p join pg_namespace n on n.oid = p.pronamespace
                where n.nspname = 'public' and p.proowner = (select oid from pg_roles where rolname = current_user)
                  and not exists (select from pg_depend e where e.classid = 'pg_proc'::regclass and e.objid = p.oid and e.deptype = 'e')
            loop
                execute format('drop function %s', d.function);
            end loop;
        end $$;
        """;
}

/// <summary>
/// Whom the database lets call its functions: the program those it calls and those its policies ask, nobody else any. Triggers need no
/// such right, and what a trigger calls it calls with its owner's.
/// </summary>
public static class FunctionPrivileges
{
    /// <summary>What the program may call; a policy asks as whoever queries.</summary>
    public static readonly IReadOnlyList<string> OfTheProgram =
    [
        "act_as(uuid, text, uuid, uuid[], uuid, timestamptz, uuid, boolean)",
        "own_page(uuid, uuid, uuid, timestamptz)",
        "app_all()",
        "app_role()",
        "app_actor()",
        "app_client()",
        "app_trainee()",
        "app_salons()",
        "app_now()",
        "app_opens_all()",
        "others_may_confirm(uuid, uuid)",
        "app_opens(uuid)",
        "app_at_home(uuid)",
        "app_keeps(uuid)",
        "forget_the_invented()",
    ];

    /// <summary>Laid last, when every function is there; one made later opens to nobody until it is named here.</summary>
    public static string Sql { get; } = $"grant execute on function {string.Join(", ", OfTheProgram)} to hairclinic_program;";
}
