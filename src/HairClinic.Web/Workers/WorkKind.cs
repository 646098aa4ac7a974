namespace HairClinic.Web.Workers;

public enum WorkKind
{
    /// <summary>A setting changed that due dates depend on.</summary>
    RefreshDueDates,

    /// <summary>A message to a client.</summary>
    SendMail,

    /// <summary>Somebody asked for a sign-in link: whether the address is known is looked up here, out of sight.</summary>
    AnswerAsk,
}
