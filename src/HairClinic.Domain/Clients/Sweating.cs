namespace HairClinic.Domain.Clients;

public enum Sweating
{
    Low,
    Normal,
    Heavy,
}
