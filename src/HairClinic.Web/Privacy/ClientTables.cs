using Microsoft.EntityFrameworkCore.Metadata;

namespace HairClinic.Web.Privacy;

/// <summary>
/// Finds every table that holds rows of a client, from the model, so that a new one is never forgotten: what refers to a
/// client, what says <c>client_id</c>, and what refers to a row of such a table.
/// </summary>
public static class ClientTables
{
    /// <summary>Those that refer to others first, as rows have to be taken out.</summary>
    public static IReadOnlyList<ClientTable> FindAll(IModel model)
    {
        var found = new Dictionary<IEntityType, string> { [model.FindEntityType(typeof(Client))!] = "id = any({0})" };
        for (var before = 0; before != found.Count; )
        {
            before = found.Count;
            foreach (var type in model.GetEntityTypes().Where(t => !found.ContainsKey(t)))
            {
                if ((Direct(type) ?? Through(type, found)) is { } where)
                    found.Add(type, where);
            }
        }
        var order = PracticeEraser.Tables(model).ToList();
        return
        [
            .. found
                .Select(f => new ClientTable(
                    f.Key.GetTableName()!,
                    f.Value,
                    f.Key.ClrType.IsSubclassOf(typeof(PracticeOwned)),
                    Columns(f.Key)
                ))
                .OrderBy(t => order.IndexOf(t.Name)),
        ];
    }

    public static IReadOnlyList<ClientTableColumn> Columns(IEntityType type)
    {
        var table = StoreObjectIdentifier.Create(type, StoreObjectType.Table)!.Value;
        return
        [
            .. type.GetFlattenedProperties()
                .Select(p => new ClientTableColumn(p.GetColumnName(table)!, p.GetColumnType(table)!))
                .Where(c => c.Name != "xmin"),
        ];
    }

    private static string? Direct(IEntityType type)
    {
        var client = type.Model.FindEntityType(typeof(Client));
        var owners = type.GetForeignKeys()
            .Where(k => k.PrincipalEntityType == client)
            .Select(k => k.Properties[^1])
            .Concat(type.GetProperties().Where(p => p.Name == "ClientId"))
            .Distinct()
            .Select(p => $"{Column(p)} = any({{0}})")
            .ToList();
        return owners.Count == 0 ? null : string.Join(" or ", owners);
    }

    // What a row cannot do without decides whose it is; only where there is no such thing, what it may refer to.
    private static string? Through(IEntityType type, Dictionary<IEntityType, string> found)
    {
        var ways = type.GetForeignKeys().Where(k => found.ContainsKey(k.PrincipalEntityType)).ToList();
        var owning = ways.Any(k => k.IsRequired) ? ways.Where(k => k.IsRequired).ToList() : ways;
        return owning.Count == 0
            ? null
            : string.Join(
                " or ",
                owning.Select(k =>
                    $"{Column(k.Properties[^1])} in (select id from {k.PrincipalEntityType.GetTableName()} where {found[k.PrincipalEntityType]})"
                )
            );
    }

    private static string Column(IProperty property) =>
        $"\"{property.GetColumnName(StoreObjectIdentifier.Create(property.DeclaringType, StoreObjectType.Table)!.Value)}\"";
}

/// <summary>A table with rows of clients, and the condition that finds those of some of them.</summary>
/// <param name="Where">SQL on the table; <c>{0}</c> stands for the clients' ids.</param>
/// <param name="Fenced">False for tables read before anybody is known: their rows are then also asked for the practice.</param>
public sealed record ClientTable(string Name, string Where, bool Fenced, IReadOnlyList<ClientTableColumn> Columns);

/// <param name="Type">The database's word for it.</param>
public sealed record ClientTableColumn(string Name, string Type)
{
    /// <summary>Whether somebody's own words or a picture can be in it.</summary>
    public bool Wordy => Type is "text" or "jsonb" or "bytea";
}
