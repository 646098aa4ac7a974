namespace HairClinic.Web.Data.Rows;

/// <summary>That a practice exists; what it is called and how it works is fenced.</summary>
public sealed class PracticeRow(Guid id)
{
    public Guid Id { get; private set; } = id;
}
