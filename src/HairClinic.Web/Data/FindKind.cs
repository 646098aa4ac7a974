namespace HairClinic.Web.Data;

public enum FindKind
{
    ClientName,
    ClientCode,
    ClientPhone,
    ClientEmail,
    UnitSerial,
}
