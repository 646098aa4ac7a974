namespace HairClinic.Web.Workers;

public enum WorkKind
{
    /// <summary>A setting changed that due dates depend on.</summary>
    RefreshDueDates,

    /// <summary>A message to a client.</summary>
    SendMail,
}
