using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using NodaTime.Serialization.SystemTextJson;

namespace HairClinic.Web.Data.Maps;

/// <summary>How values are written as JSON, in columns and in kept answers.</summary>
public static class JsonColumns
{
    public static readonly JsonSerializerOptions Options = new JsonSerializerOptions
    {
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Converters = { new JsonStringEnumConverter() },
    }.ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);

    public static readonly ValueConverter<IReadOnlyList<DueReason>, string> DueReasons = new(
        reasons => JsonSerializer.Serialize(reasons, Options),
        json => JsonSerializer.Deserialize<List<DueReason>>(json, Options)!
    );

    public static readonly ValueComparer<IReadOnlyList<DueReason>> DueReasonsComparer = new(
        (a, b) => a!.SequenceEqual(b!),
        reasons => reasons.Count,
        reasons => reasons.ToList()
    );

    /// <summary>A list kept in one jsonb column; it is replaced whole, so two of the same text are the same.</summary>
    public static void HasJsonConversion<T>(this PropertyBuilder<IReadOnlyList<T>> property)
    {
        property
            .HasColumnType("jsonb")
            .HasConversion(
                new ValueConverter<IReadOnlyList<T>, string>(
                    list => JsonSerializer.Serialize(list, Options),
                    json => JsonSerializer.Deserialize<List<T>>(json, Options)!
                ),
                new ValueComparer<IReadOnlyList<T>>((a, b) => ReferenceEquals(a, b), list => list.Count, list => list)
            );
    }
}
