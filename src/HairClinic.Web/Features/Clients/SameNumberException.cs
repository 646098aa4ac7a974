namespace HairClinic.Web.Features.Clients;

/// <summary>Nothing was saved: somebody should say first whether it is the same person. Known as invalid so that a repeated submission still gets its first answer.</summary>
internal sealed class SameNumberException(IReadOnlyList<SameNumber.Other> others)
    : InvalidOperationException("Another client has the same number.")
{
    public IReadOnlyList<SameNumber.Other> Others { get; } = others;
}
