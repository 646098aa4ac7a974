namespace HairClinic.Domain.Clients;

public enum PhotoKind
{
    Before,
    After,
    Template,
    Scalp,
    Other,
}
