using HairClinic.Web.Data;
using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Features.Binder;

/// <summary>The practice's services by name, with those an import has made so far.</summary>
public sealed class ServiceIndex
{
    private const int UsualMinutes = 60;
    private const int Shortest = 5;
    private const int Longest = 480;

    // What a name gives away of a service's purpose; the practice corrects it on its services page.
    private static readonly (string Word, ServicePurpose Purpose)[] Hints =
    [
        ("rebond", ServicePurpose.Rebond),
        ("fit", ServicePurpose.FirstFitting),
        ("wash", ServicePurpose.WashAndStyle),
        ("consult", ServicePurpose.Consultation),
        ("measur", ServicePurpose.Measuring),
        ("template", ServicePurpose.Measuring),
        ("lift", ServicePurpose.FixLift),
    ];

    private readonly Dictionary<Guid, ServiceKind> _services;

    private ServiceIndex(List<ServiceKind> services)
    {
        _services = services.ToDictionary(s => s.Id);
        Names = new(services, s => s.Name);
    }

    public NameIndex<ServiceKind> Names { get; }

    public static async Task<ServiceIndex> LoadAsync(ClinicDb db, CancellationToken cancellation) =>
        new(await db.ServiceKinds.AsNoTracking().Include(s => s.Steps).OrderBy(s => s.Id).ToListAsync(cancellation));

    public string NameOf(Guid id) => _services[id].Name;

    public ServiceKind Make(string name, int? minutes)
    {
        var plain = PlainWords.Normalize(name);
        var purpose = Hints
            .Where(h => plain.Contains(h.Word, StringComparison.Ordinal))
            .Select(h => (ServicePurpose?)h.Purpose)
            .FirstOrDefault();
        var service = new ServiceKind(Guid.CreateVersion7(), name, purpose ?? ServicePurpose.Other);
        service.Consist([(Guid.CreateVersion7(), SegmentKind.HandsOn, Math.Clamp(minutes ?? UsualMinutes, Shortest, Longest))]);
        _services.Add(service.Id, service);
        return service;
    }

    /// <summary>The service's own steps where the row lasts as long as they do, else one stretch of hands-on work.</summary>
    public static IReadOnlyList<(SegmentKind Kind, int Minutes)> StepsFor(ServiceKind service, int? minutes) =>
        minutes is null || minutes == service.Minutes
            ? [.. service.Steps.OrderBy(s => s.Position).Select(s => (s.Kind, s.Minutes))]
            : [(SegmentKind.HandsOn, minutes.Value)];
}
