namespace HairClinic.Domain.Clients;

public enum ClientEventKind
{
    Celebration,
    Travel,
    Surgery,
    Other,
}
