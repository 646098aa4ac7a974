namespace HairClinic.Web.Features.Visits;

/// <summary>Nothing was saved: somebody should look at the doubts first. Known as invalid so that a repeated submission still gets its first answer.</summary>
internal sealed class DoubtedException(IReadOnlyList<Doubt> doubts) : InvalidOperationException("There are doubts about this time.")
{
    public IReadOnlyList<Doubt> Doubts { get; } = doubts;
}
