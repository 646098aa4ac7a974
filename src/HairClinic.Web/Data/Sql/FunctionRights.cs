namespace HairClinic.Web.Data.Sql;

/// <summary>
/// Whom the database lets call its functions: the program those it calls and those its policies ask, nobody else any. Triggers need no
/// such right, and what a trigger calls it calls with its owner's.
/// </summary>
public static class FunctionRights
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
