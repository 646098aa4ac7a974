namespace HairClinic.Domain.Clients;

public enum ContactKind
{
    Rang,
    RangNoAnswer,
    Messaged,
    SlotOffered,
    PutOff,
}
