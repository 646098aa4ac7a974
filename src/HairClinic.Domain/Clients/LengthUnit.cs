namespace HairClinic.Domain.Clients;

/// <summary>What lengths are shown in; they are kept in millimetres.</summary>
public enum LengthUnit
{
    Centimetres,
    Inches,
}
