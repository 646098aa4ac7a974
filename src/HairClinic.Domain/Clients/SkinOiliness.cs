namespace HairClinic.Domain.Clients;

public enum SkinOiliness
{
    Dry,
    Normal,
    Oily,
}
