using System.Text.Json;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Maps;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace HairClinic.Web.Tests.Layout;

public sealed class MapLayoutTests
{
    private static readonly IModel Model = new ClinicDb(ClinicDbOptions.For("Host=layout")).Model;

    [Fact]
    public void Each_entity_has_exactly_one_map()
    {
        var maps = typeof(ClinicDb)
            .Assembly.GetTypes()
            .Where(t => t.BaseType is { IsGenericType: true } b && b.GetGenericTypeDefinition() == typeof(FencedMap<>))
            .ToLookup(t => t.BaseType!.GetGenericArguments()[0], t => t.Name);

        var offenders = ClinicDb.FencedTypes.Where(e => !maps[e].SequenceEqual([e.Name + "Map"])).Select(e => e.Name);

        Assert.Empty(offenders);
    }

    [Fact]
    public void Each_table_is_the_snake_case_plural_of_its_entity()
    {
        var offenders =
            from entity in Fenced()
            let snake = JsonNamingPolicy.SnakeCaseLower.ConvertName(entity.ClrType.Name)
            let table = entity.GetTableName()
            where
                table != snake + (snake.EndsWith('s') || snake.EndsWith("ch", StringComparison.Ordinal) ? "es" : "s")
                && table != snake
                && table != "people"
            select $"{entity.ClrType.Name} → {table}";

        Assert.Empty(offenders);
    }

    [Fact]
    public void The_practice_is_in_every_key_and_in_every_reference()
    {
        var keys = Fenced()
            .Where(e => e.FindPrimaryKey()!.Properties[0].Name != nameof(PracticeOwned.PracticeId))
            .Select(e => e.ClrType.Name);
        var references =
            from entity in Fenced()
            from reference in entity.GetForeignKeys()
            where reference.Properties[0].Name != nameof(PracticeOwned.PracticeId)
            select $"{entity.ClrType.Name} → {reference.PrincipalEntityType.ClrType.Name}";

        Assert.Empty(keys.Concat(references));
    }

    [Fact]
    public void Every_fenced_entity_is_filtered_by_the_acting_practice()
    {
        var offenders = Fenced().Where(e => e.FindDeclaredQueryFilter("practice") is null).Select(e => e.ClrType.Name);

        Assert.Empty(offenders);
    }

    private static IEnumerable<IEntityType> Fenced() => Model.GetEntityTypes().Where(e => e.ClrType.IsSubclassOf(typeof(PracticeOwned)));
}
