using HairClinic.Domain.Visits;

namespace HairClinic.Domain.Clients;

/// <summary>
/// What desk and stylists must know of health answers they may not read: which product or kind of service to ask about
/// first. It never says why.
/// </summary>
public sealed class Clearance : PracticeOwned
{
    private Clearance() { }

    public Clearance(Guid id, Guid clientId, Guid healthAnswerId, ClearanceSpec fact)
    {
        Id = id;
        ClientId = clientId;
        HealthAnswerId = healthAnswerId;
        (ProductId, Purpose, From, Until, Kind) = (fact.ProductId, fact.Purpose, fact.From, fact.Until, fact.Kind);
    }

    public Guid ClientId { get; private set; }

    /// <summary>The answers it was written from; the next ones replace it.</summary>
    public Guid HealthAnswerId { get; private set; }

    /// <summary>Null: no single product.</summary>
    public Guid? ProductId { get; private set; }

    /// <summary>Null: whatever the visit is for.</summary>
    public ServicePurpose? Purpose { get; private set; }

    public LocalDate From { get; private set; }

    /// <summary>The last day on which it holds; null until new answers replace it.</summary>
    public LocalDate? Until { get; private set; }

    public ClearanceSeverity Kind { get; private set; }

    /// <summary>Whether it speaks about a service of that purpose on that day.</summary>
    public bool ConcernsServiceOn(ServicePurpose purpose, LocalDate day) =>
        ProductId is null && (Purpose is null || Purpose == purpose) && IsValidOn(day);

    public bool IsValidOn(LocalDate day) => day >= From && (Until is null || day <= Until);
}

/// <summary>What a rule says: this product or this purpose, in these days, is blocked or warned of.</summary>
public sealed record ClearanceSpec(Guid? ProductId, ServicePurpose? Purpose, LocalDate From, LocalDate? Until, ClearanceSeverity Kind);

public enum ClearanceSeverity
{
    /// <summary>Take a second look.</summary>
    Warn,

    /// <summary>Not until someone who may know the reason allows it.</summary>
    Block,
}
