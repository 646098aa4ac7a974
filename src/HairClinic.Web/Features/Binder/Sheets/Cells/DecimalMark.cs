namespace HairClinic.Web.Features.Binder.Sheets;

public enum DecimalMark
{
    Point,
    Comma,
}
