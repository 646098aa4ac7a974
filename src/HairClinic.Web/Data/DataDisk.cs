namespace HairClinic.Web.Data;

/// <summary>The disk that fills up as the practice goes on: of the data folder, with photos and, where it is our own, the database.</summary>
public sealed class DataDisk(Func<DiskSpace?> look)
{
    public DiskSpace? Now() => look();
}
