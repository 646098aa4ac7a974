using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
using HairClinic.Web.Features.MyHair;
using NodaTime;
using Npgsql;
using Slice = HairClinic.Web.Features.MyHair.MyHair;

namespace HairClinic.Web.Tests.Features.MyHair.MyHair;

/// <summary>What the database's own_page brings and what the page's record takes is the same: no compiler looks at both.</summary>
public sealed class OwnPageColumnsTests(PgServer server)
{
    private static readonly Dictionary<Type, string> Kinds = new()
    {
        [typeof(string)] = "text",
        [typeof(int)] = "integer",
        [typeof(bool)] = "boolean",
        [typeof(Guid)] = "uuid",
        [typeof(LocalDate)] = "date",
        [typeof(Instant)] = "timestamp with time zone",
        [typeof(IReadOnlyList<DueReason>)] = "jsonb",
        [typeof(UnitState)] = "text",
        [typeof(VisitState)] = "text",
    };

    [Fact]
    public async Task The_page_takes_what_the_function_brings_by_name_and_type()
    {
        var brought = await BroughtAsync();
        var taken = OwnPageRowMapper.Screen.Columns.ToDictionary(c => c.Name, c => Kinds[c.Type]);

        List<string> trouble =
        [
            .. from t in taken
            where !brought.ContainsKey(t.Key)
            select $"own_page brings no column {t.Key} ({t.Value}), which {nameof(Slice.Screen)} takes.",
            .. from b in brought
            where !taken.ContainsKey(b.Key)
            select $"{nameof(Slice.Screen)} has no property for the column {b.Key} ({b.Value}) that own_page brings.",
            .. from b in brought
            where taken.TryGetValue(b.Key, out var type) && type != b.Value
            select $"own_page brings {b.Key} as {b.Value}, and {nameof(Slice.Screen)} takes it as {taken[b.Key]}.",
        ];

        Assert.True(trouble.Count == 0, string.Join('\n', trouble));
    }

    private async Task<Dictionary<string, string>> BroughtAsync()
    {
        await using var connection = new NpgsqlConnection(server.Connections.Migrator);
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        await using var ask = new NpgsqlCommand(
            """
            select c.name, format_type(c.type, null) from pg_proc p, unnest(p.proargnames, p.proallargtypes, p.proargmodes) c(name, type, mode)
            where p.proname = 'own_page' and c.mode = 't'
            """,
            connection
        );
        await using var row = await ask.ExecuteReaderAsync(TestContext.Current.CancellationToken);
        var columns = new Dictionary<string, string>();
        while (await row.ReadAsync(TestContext.Current.CancellationToken))
            columns.Add(row.GetString(0), row.GetString(1));
        return columns;
    }
}
