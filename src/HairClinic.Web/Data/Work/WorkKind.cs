namespace HairClinic.Web.Data.Work;

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

    /// <summary>So much changed that everything is calculated anew.</summary>
    Recalculate,

    /// <summary>A salon asks for a client of another one, by a code or a phone number.</summary>
    AskForClient,
}
