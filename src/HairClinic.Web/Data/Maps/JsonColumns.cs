using System.Text.Json;
using System.Text.Json.Serialization;
using HairClinic.Domain.Wear;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using NodaTime;
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
}
