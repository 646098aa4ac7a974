namespace HairClinic.Web.Data.AccessLog;

public enum AccessActorKind
{
    Person,
    Client,
    Job,
}
