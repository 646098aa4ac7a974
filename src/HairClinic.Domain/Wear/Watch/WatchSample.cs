namespace HairClinic.Domain.Wear.Watch;

/// <summary>Of a great many units a share is watched, by client: it tells of a decline as soon as all would, for a share of the work.</summary>
public static class WatchSample
{
    /// <summary>So many units of the watched year are enough.</summary>
    public const int Enough = 4000;

    /// <summary>One client in so many is watched.</summary>
    /// <param name="units">Delivered (or bonded) in the watched year.</param>
    public static int OneIn(int units) => Math.Max(1, (units + Enough - 1) / Enough);

    /// <summary>The same clients each night, whoever else comes.</summary>
    public static bool Keeps(Guid client, int oneIn) => BitConverter.ToUInt32(client.ToByteArray(), 12) % (uint)oneIn == 0;
}
