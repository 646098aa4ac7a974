namespace HairClinic.Domain.Clients;

public enum LifeEventKind
{
    Celebration,
    Travel,
    Surgery,
    Other,
}
