using NodaTime;

namespace HairClinic.Web.Features.Wear;

/// <summary>An open bond with the answers that decide its part.</summary>
internal sealed class MarkedBond
{
    public required Guid BondId { get; init; }

    public required LocalDate OpensOn { get; init; }

    public required LocalDate ClosesOn { get; init; }

    public required bool Lifted { get; init; }

    public required bool Booked { get; init; }

    public required bool PutOff { get; init; }

    public required bool AtRisk { get; init; }
}
