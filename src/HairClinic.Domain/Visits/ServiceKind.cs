using HairClinic.Domain.Chairs;

namespace HairClinic.Domain.Visits;

/// <summary>A service as the practice offers it: an ordered list of steps, each hands-on or a wait.</summary>
public sealed class ServiceKind : PracticeOwned
{
    private readonly List<ServiceStep> _steps = [];

    private ServiceKind() { }

    public ServiceKind(Guid id, string name, ServicePurpose purpose)
    {
        Id = id;
        Edit(name, purpose, priceMinor: null, currency: null);
        OfferedToClients = purpose is ServicePurpose.Rebond or ServicePurpose.WashAndStyle or ServicePurpose.FixLift;
    }

    public string Name { get; private set; } = "";
    public ServicePurpose Purpose { get; private set; }

    /// <summary>Minor units of <see cref="Currency"/>.</summary>
    public long? PriceMinor { get; private set; }

    public string? Currency { get; private set; }

    /// <summary>Whether clients may book it by themselves; what needs a talk first is booked by the desk.</summary>
    public bool OfferedToClients { get; private set; }

    public bool Retired { get; private set; }

    public IReadOnlyList<ServiceStep> Steps => _steps;

    /// <summary>Minutes the chair is taken from start to end.</summary>
    public int Minutes => _steps.Sum(s => s.Minutes);

    public void Edit(string name, ServicePurpose purpose, long? priceMinor, string? currency)
    {
        Name = name.Trim();
        Purpose = purpose;
        PriceMinor = priceMinor;
        Currency = currency;
    }

    /// <exception cref="Refusal">No step, or a step of less than 5 or more than 480 minutes.</exception>
    public void SetSteps(IEnumerable<(Guid Id, SegmentKind Kind, int Minutes)> steps)
    {
        var made = steps.Select((s, i) => new ServiceStep(s.Id, Id, i + 1, s.Kind, s.Minutes)).ToList();
        if (made.Count == 0)
            throw new Refusal("A service has at least one step.");
        _steps.Clear();
        _steps.AddRange(made);
    }

    public void SetOfferedToClients(bool offered) => OfferedToClients = offered;

    public void Retire() => Retired = true;
}

/// <summary>What a service is for, as far as the schedule must know.</summary>
public enum ServicePurpose
{
    Consultation,
    Measuring,
    FirstFitting,
    Rebond,
    WashAndStyle,
    FixLift,
    Other,
}
