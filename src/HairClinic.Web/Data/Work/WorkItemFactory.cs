using HairClinic.Web.Data.Maps;

namespace HairClinic.Web.Data.Work;

/// <summary>Makes work to be saved together with the change that needs it.</summary>
public static class WorkItemFactory
{
    public static WorkItem RefreshDueDates(Guid? clientId, Instant now) =>
        new(Guid.CreateVersion7(), WorkKind.RefreshDueDates, WriteBody(new RefreshDueDatesBody(clientId)), now);

    public static WorkItem SendLetter(Letter letter, Instant now) => new(Guid.CreateVersion7(), WorkKind.SendMail, WriteBody(letter), now);

    public static WorkItem RemoveFiles(IReadOnlyList<Guid> files, Instant now) =>
        new(Guid.CreateVersion7(), WorkKind.RemoveFiles, WriteBody(new RemoveFilesBody(files)), now);

    public static WorkItem PlanOrders(IReadOnlyList<Guid> clientIds, Instant now) =>
        new(Guid.CreateVersion7(), WorkKind.PlanOrders, WriteBody(new PlanOrdersBody(clientIds)), now);

    public static WorkItem SpreadOrder(Guid orderId, Guid? by, Instant now) =>
        new(Guid.CreateVersion7(), WorkKind.SpreadOrder, WriteBody(new SpreadOrderBody(orderId, by)), now);

    public static WorkItem RequestClientAccess(RequestClientAccessBody ask, Instant now) =>
        new(Guid.CreateVersion7(), WorkKind.AskForClient, WriteBody(ask), now);

    public static WorkItem Recalculate(Instant now) => new(Guid.CreateVersion7(), WorkKind.Recalculate, "{}", now);

    public static T ReadBody<T>(WorkItem item) => JsonSerializer.Deserialize<T>(item.Body, JsonColumns.Options)!;

    public static string WriteBody<T>(T body) => JsonSerializer.Serialize(body, JsonColumns.Options);
}

/// <param name="Id">Of the request there will be, if there is such a client.</param>
/// <param name="CodeOrPhone">As it was typed.</param>
public sealed record RequestClientAccessBody(Guid Id, Guid SalonId, Guid AskedBy, string CodeOrPhone, string Because);

/// <summary>An order whose lines follow what was said of it.</summary>
/// <param name="By">Who wrote it.</param>
public sealed record SpreadOrderBody(Guid OrderId, Guid? By);

/// <summary>Whose next orders to recalculate.</summary>
public sealed record PlanOrdersBody(IReadOnlyList<Guid> ClientIds);

/// <summary>Whose due dates to recalculate; null for every open bond of the practice.</summary>
public sealed record RefreshDueDatesBody(Guid? ClientId);

/// <summary>Sealed files that nobody can open any more.</summary>
public sealed record RemoveFilesBody(IReadOnlyList<Guid> Files);
