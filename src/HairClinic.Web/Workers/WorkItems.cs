using System.Text.Json;
using HairClinic.Web.Data.Maps;
using NodaTime;

namespace HairClinic.Web.Workers;

/// <summary>Makes work to be saved together with the change that needs it.</summary>
public static class WorkItems
{
    public static WorkItem RefreshDueDates(Guid? clientId, Instant now) =>
        new(Guid.CreateVersion7(), WorkKind.RefreshDueDates, Write(new RefreshDueDatesBody(clientId)), now);

    public static WorkItem Send(Letter letter, Instant now) => new(Guid.CreateVersion7(), WorkKind.SendMail, Write(letter), now);

    public static T Read<T>(WorkItem item) => JsonSerializer.Deserialize<T>(item.Body, JsonColumns.Options)!;

    private static string Write<T>(T body) => JsonSerializer.Serialize(body, JsonColumns.Options);
}
