namespace HairClinic.Web.Features.Binder.Sheets.Cells;

public enum DecimalMark
{
    Point,
    Comma,
}
