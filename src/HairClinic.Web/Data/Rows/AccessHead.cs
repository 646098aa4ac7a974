namespace HairClinic.Web.Data.Rows;

/// <summary>The last line of a practice's access log. Adding a line locks this row, so that the chain never forks.</summary>
public sealed class AccessHead : PracticeOwned
{
    private AccessHead() { }

    public long Number { get; private set; }
    public byte[] Hash { get; private set; } = [];
}
