namespace HairClinic.Web.Data.Work;

/// <summary>Kinds of work that run beside other kinds, so that slow work only delays its own kind.</summary>
/// <param name="Kinds">What goes here; each kind has one lane.</param>
/// <param name="Width">How many go on at a time in this program, of all practices together.</param>
/// <param name="OneAPractice">Whether a practice's go one after another, because they would write the same rows.</param>
/// <param name="Patience">How long one of them may take.</param>
public sealed record WorkConcurrencyGroup(IReadOnlyList<WorkKind> Kinds, int Width, bool OneAPractice, TimeSpan Patience)
{
    public static readonly WorkConcurrencyGroup Letters = new([WorkKind.SendMail], 4, OneAPractice: false, TimeSpan.FromSeconds(40));
    public static readonly WorkConcurrencyGroup Plans = new([WorkKind.PlanOrders], 2, OneAPractice: true, TimeSpan.FromMinutes(10));
    public static readonly WorkConcurrencyGroup DueDates = new([WorkKind.RefreshDueDates], 2, OneAPractice: true, TimeSpan.FromMinutes(30));
    public static readonly WorkConcurrencyGroup Rest = new(
        [WorkKind.RemoveFiles, WorkKind.Recalculate, WorkKind.AskForClient, WorkKind.SpreadOrder],
        2,
        OneAPractice: false,
        TimeSpan.FromMinutes(2)
    );

    public static readonly IReadOnlyList<WorkConcurrencyGroup> All = [Letters, Plans, DueDates, Rest];
}

public enum WorkKind
{
    /// <summary>A setting changed that due dates depend on.</summary>
    RefreshDueDates,

    /// <summary>A message to a client.</summary>
    SendMail,

    /// <summary>Files of a client who was erased.</summary>
    RemoveFiles,

    /// <summary>Something changed on which some clients' next orders depend.</summary>
    PlanOrders,

    /// <summary>So much changed that everything is recalculated.</summary>
    Recalculate,

    /// <summary>A salon asks for a client of another one, by a code or a phone number.</summary>
    AskForClient,

    /// <summary>A workshop said something of an order, some of whose units whoever wrote it does not see.</summary>
    SpreadOrder,
}
