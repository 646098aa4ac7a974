namespace HairClinic.Web.Features.Binder.Sheets;

public sealed record SheetLimits(int Bytes = 20 * 1024 * 1024, int Rows = 200_000, int Columns = 500)
{
    public static SheetLimits Default { get; } = new();
}
