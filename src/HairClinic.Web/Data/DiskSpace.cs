namespace HairClinic.Web.Data;

/// <summary>Room on a disk, in bytes.</summary>
public sealed record DiskSpace(long Free, long Total)
{
    private const long Gigabyte = 1L << 30;

    public double FreeGigabytes => Free / (double)Gigabyte;

    /// <summary>Less than 1 GB, or less than 5 % where that is not much either: a large disk is not full with 10 GB left.</summary>
    public bool IsLow => Free < Gigabyte || Free < Total / 20 && Free < 10 * Gigabyte;

    /// <summary>Of the disk a folder is on, or will be on; null where that is unknown.</summary>
    public static DiskSpace? For(string folder)
    {
        var there = Path.GetFullPath(folder);
        while (!Directory.Exists(there) && Path.GetDirectoryName(there) is { } above)
            there = above;
        try
        {
            var drive = new DriveInfo(there);
            return new(drive.AvailableFreeSpace, drive.TotalSize);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return null;
        }
    }
}

/// <summary>The disk that fills up as the practice goes on: of the data folder, with photos and, where it is our own, the database.</summary>
public sealed class DataDisk(Func<DiskSpace?> look)
{
    public DiskSpace? Measure() => look();
}
