using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Wear;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Data.Books;

/// <summary>
/// What the due rule needs to know of the practice, read once: settings, salons with their opening days, hold
/// windows. Whoever logs, imports or refreshes bonds asks it for the basis of one bond.
/// </summary>
public sealed class DueBook
{
    private readonly PracticeSettings _settings;
    private readonly List<HoldWindowRule> _rules;
    private readonly Dictionary<Guid, Salon> _salons;
    private readonly Dictionary<Guid, OpeningDays> _opening;

    private DueBook(PracticeSettings settings, List<Salon> salons, List<HoldWindowRule> rules)
    {
        _settings = settings;
        _rules = rules;
        _salons = salons.ToDictionary(s => s.Id);
        _opening = salons.ToDictionary(s => s.Id, DueBasis.OpeningOf);
    }

    public PracticeSettings Settings => _settings;

    public Salon SalonOf(Client client) => _salons[client.HomeSalonId];

    public Salon Salon(Guid salonId) => _salons[salonId];

    /// <summary>Three round trips, however many bonds are asked about.</summary>
    public static async Task<DueBook> LoadAsync(ClinicDb db, CancellationToken cancellation) =>
        new(
            await db.PracticeSettings.AsNoTracking().SingleAsync(cancellation),
            await db.Salons.AsNoTracking().Include(s => s.Hours).Include(s => s.Closures).ToListAsync(cancellation),
            await db.HoldWindowRules.AsNoTracking().ToListAsync(cancellation)
        );

    /// <param name="client">With their life events loaded.</param>
    /// <exception cref="Refusal">No hold window fits.</exception>
    public DueBasis BasisFor(Client client, Guid baseMaterialId, Guid? adhesiveId, Attachment attachment, int? labelCureHours = null) =>
        new(_opening[client.HomeSalonId], _settings, HoldWindowRule.Choose(_rules, baseMaterialId, adhesiveId, attachment), client)
        {
            LabelCureHours = labelCureHours,
        };
}
