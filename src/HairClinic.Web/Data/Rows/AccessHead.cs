namespace HairClinic.Web.Data.Rows;

/// <summary>The last line of a practice's access log. Whoever adds a line holds this row, so that the chain never forks.</summary>
public sealed class AccessHead : PracticeOwned
{
    private AccessHead() { }

    public long Number { get; private set; }

    public byte[] Hash { get; private set; } = [];
}
