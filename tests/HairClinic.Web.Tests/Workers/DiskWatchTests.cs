using HairClinic.Web.Data;
using HairClinic.Web.Workers;
using NodaTime.Testing;

namespace HairClinic.Web.Tests.Workers;

public sealed class DiskWatchTests
{
    private const long Gigabyte = 1L << 30;

    [Theory]
    [InlineData(0.9, 20, true)]
    [InlineData(1.1, 20, false)]
    [InlineData(1.1, 40, true)]
    [InlineData(9.9, 4000, true)]
    [InlineData(10, 4000, false)]
    [InlineData(60, 1000, false)]
    public void A_disk_is_nearly_full_below_a_gigabyte_or_below_a_twentieth_where_that_is_little_too(double free, double total, bool low) =>
        Assert.Equal(low, new DiskSpace((long)(free * Gigabyte), (long)(total * Gigabyte)).IsLow);

    [Fact]
    public void The_room_of_a_folder_that_is_not_made_yet_is_that_of_its_disk()
    {
        var space = DiskSpace.For(Path.Combine(Path.GetTempPath(), "not", "there", "yet"));

        Assert.NotNull(space);
        Assert.InRange(space.Free, 1, space.Total);
    }

    [Fact]
    public void It_is_said_once_a_day_and_anew_when_it_comes_back()
    {
        DiskSpace? space = new(Gigabyte / 2, 20 * Gigabyte);
        var (log, clock) = (new KeptLog<DiskWatch>(), new FakeClock(TestClinic.UsualNow));
        using var watch = new DiskWatch(new DataDisk(() => space), clock, log);

        for (var hour = 0; hour < 25; hour++, clock.AdvanceHours(1))
            watch.WarnIfLow();
        Assert.Equal(2, log.Lines.Count);
        Assert.Contains("0.5 GB left", log.Lines[0], StringComparison.Ordinal);

        space = new(5 * Gigabyte, 20 * Gigabyte);
        watch.WarnIfLow();
        space = null;
        watch.WarnIfLow();
        Assert.Equal(2, log.Lines.Count);
        space = new(Gigabyte / 4, 20 * Gigabyte);
        watch.WarnIfLow();
        Assert.Equal(3, log.Lines.Count);
    }
}
