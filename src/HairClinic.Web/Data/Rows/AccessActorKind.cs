namespace HairClinic.Web.Data.Rows;

public enum AccessActorKind
{
    Person,
    Client,
    Job,
}
