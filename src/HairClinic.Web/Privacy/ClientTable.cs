namespace HairClinic.Web.Privacy;

/// <summary>A table with rows of clients, and the condition that finds those of some of them.</summary>
/// <param name="Where">SQL on the table; <c>{0}</c> stands for the clients' ids.</param>
/// <param name="Fenced">False for tables read before anybody is known: their rows are then also asked for the practice.</param>
public sealed record ClientTable(string Name, string Where, bool Fenced, IReadOnlyList<ClientColumn> Columns);

/// <param name="Type">The database's word for it.</param>
public sealed record ClientColumn(string Name, string Type)
{
    /// <summary>Whether somebody's own words or a picture can be in it.</summary>
    public bool Wordy => Type is "text" or "jsonb" or "bytea";
}
