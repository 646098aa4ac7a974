namespace HairClinic.Web.Data.Sql;

/// <summary>
/// The conditions that decide which rows of a practice an actor reaches, as SQL for row policies. What the actor is comes from
/// settings that <c>act_as</c> made; each is asked in a sub-select of its own, so that PostgreSQL reads it once a query, not once a row.
/// </summary>
public static class RowConditions
{
    /// <summary>Every row of the practice.</summary>
    public const string Practice = "true";

    /// <summary>Rows that were written by whoever acts.</summary>
    public const string OwnWriting = "(select app_role()) = 'Job' or actor_id = (select app_actor())";

    /// <summary>Lines of the access log: all for owners, for others those they wrote and those about themselves.</summary>
    public const string OwnWritingOrAboutOneself =
        "(select app_all()) or actor_id = (select app_actor()) or client_id = (select app_client())";

    /// <summary>What only a confirmed address reads of it; a client who looks is noted all the same.</summary>
    public const string ConfidedWriting = $"({OwnWritingOrAboutOneself}) and {OpensAll}";

    /// <summary>Rows of the acting person.</summary>
    public const string OwnPerson = "(select app_role()) = 'Job' or person_id = (select app_actor())";

    /// <summary>Rows of clients whom the actor may open: all, those of their salons, those of their own visits, or only themselves.</summary>
    public static string OfClients(string table, string column = "client_id") =>
        $"""
            (select app_all()) or {table}.{column} = (select app_client()) or {Granted(table, column)}
            """;

    /// <summary>As <see cref="OfClients"/>, and to a client themselves only by an address that is confirmed.</summary>
    public static string ConfidentialOfClients(string table) => $"({OfClients(table)}) and {OpensAll}";

    /// <summary>What was worked out for certain salons: to whoever sees all of those. What names none was worked out for an owner.</summary>
    public const string OwnSalons = "(select app_all()) or salons <> '{}' and salons <@ (select app_salons())";

    /// <summary>A client's own row: as its home salon stands on it, a row that is being added is reached too.</summary>
    public static string ClientRow =>
        $"""
            (select app_all()) or clients.id = (select app_client())
            or clients.home_salon_id = any ((select app_salons())::uuid[]) or {Granted("clients", "id")}
            """;

    /// <summary>As <see cref="OfClients"/>, and what belongs to nobody yet is the staff's.</summary>
    public static string OfClientsOrStock(string table) =>
        $"""
            (select app_all()) or client_id is null and (select app_client()) is null
            or {table}.client_id = (select app_client()) and {OpensAll} or {Granted(table, "client_id")}
            """;

    /// <summary>Visits of clients one may open, those in one's salons whoever comes, and one's own.</summary>
    public static string Visits =>
        $"""
            (select app_all()) or visits.client_id = (select app_client())
            or visits.salon_id = any ((select app_salons())::uuid[]) or visits.person_id = (select app_trainee())
            or {Granted("visits", "client_id")}
            """;

    /// <summary>Parts of a row that is reached by a rule of its own.</summary>
    public static string PartOf(string table, string column, string parent) =>
        $"(select app_all()) or exists (select from {parent} p where p.practice_id = {table}.practice_id and p.id = {table}.{column})";

    /// <summary>What was seen and done at visits one reaches, and to a client themselves only by an address that is confirmed.</summary>
    public static string VisitRecords => $"({PartOf("visit_records", "visit_id", "visits")}) and {OpensAll}";

    /// <summary>Dates that are asked about, as the unit or bond is reached whose they are; what is about a workshop is the staff's.</summary>
    public static string DateChecks =>
        $"""
            (select app_all()) or (select app_client()) is null
            and (hair_system_id is null or {PartOf("date_checks", "hair_system_id", "hair_systems")})
            and (bond_id is null or {PartOf("date_checks", "bond_id", "bonds")})
            """;

    /// <summary>Words lead to clients and to units; each is reached as what it leads to.</summary>
    public static string FindWords =>
        $"""
            (select app_all())
            or kind <> 'UnitSerial' and {Granted("find_words", "subject_id")}
            or kind = 'UnitSerial' and exists (select from hair_systems p where p.practice_id = find_words.practice_id and p.id = find_words.subject_id)
            """;

    /// <summary>Grants of clients one may open: those that let one in, and through them the others.</summary>
    public const string Grants = """
        (select app_all())
        or (salon_id = any ((select app_salons())::uuid[]) or person_id = (select app_trainee()))
           and starts_at <= (select app_now()) and (ends_at is null or ends_at > (select app_now()))
        or app_opens(client_id)
        """;

    /// <summary>Photos of clients one may open; to clients themselves those that were shared with them.</summary>
    public static string Photos => $"({ConfidentialOfClients("photos")}) and ((select app_client()) is null or photos.shared)";

    /// <summary>What only a client's home salon may write: it alone lets others in.</summary>
    public const string AtHome = "(select app_all()) or app_at_home(client_id)";

    /// <summary>As <see cref="AtHome"/>, for the two records of a merge.</summary>
    public const string BothAtHome = "(select app_all()) or app_at_home(kept_id) and app_at_home(folded_id)";

    /// <summary>What only the home salon may write, and no job on behalf of others.</summary>
    public const string Kept = "app_keeps(client_id)";

    /// <summary>
    /// A visit opens its client to its salon, so whoever writes one reaches them already, and writes it in a salon of their own:
    /// only the home salon has its clients come elsewhere. Asked of each row that is written, of none that is read.
    /// </summary>
    public const string WrittenVisits = """
        (select app_all()) or visits.client_id = (select app_client())
        or app_opens(visits.client_id) and (
            (select app_trainee()) is not null or visits.salon_id = any ((select app_salons())::uuid[]) or app_at_home(visits.client_id))
        """;

    private const string OpensAll = "(select app_opens_all())";

    // The offset keeps it a look-up for each row that is read: without one the planner, who counts with all rows of the table, first
    // gathers everybody who is opened, and a page of fifty rows waits for a million clients.
    private static string Granted(string table, string column) =>
        $"exists (select from opened_clients o where o.practice_id = {table}.practice_id and o.client_id = {table}.{column} offset 0)";
}
