namespace HairClinic.Web.Data.Sql;

/// <summary>What PostgreSQL lets the program do with a table's rows: which rows an actor reaches, and which roles may do what with them.</summary>
/// <param name="Rows">Within the acting practice; see <see cref="AccessRules"/>.</param>
public sealed record AccessRule(string Table, string Rows, AllowedRoles Read, AllowedRoles Add, AllowedRoles Change, AllowedRoles Remove)
{
    /// <summary>Where fewer rows may be written than read.</summary>
    public string Writes { get; init; } = Rows;

    /// <summary>
    /// Where a row as it is written has to fulfil more than one that is found: then what was missing is an error, not nothing changed.
    /// </summary>
    public string? Written { get; init; }
}
