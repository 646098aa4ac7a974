namespace HairClinic.Web.Features.Binder.Sheets;

public enum SheetEncoding
{
    Utf8,
    Utf8WithMark,
    Utf16LittleEndian,
    Utf16BigEndian,
    Windows1252,
}
