using HairClinic.Web.Data;
using HairClinic.Web.Features.Settings;

namespace HairClinic.Web.Demo.Scenes;

/// <summary>
/// Lays invented things into a practice, in the words of the trade. Demo scenes and the givens of tests
/// are both built with it. Everything is added to one context; nothing is saved until <see cref="SaveAsync"/>.
/// </summary>
public sealed class Scene(ClinicDb db, Instant now)
{
    private readonly List<Guid> _unconfirmed = [];

    private int _serials;

    public ClinicDb Db => db;

    public Instant Now => now;

    public PracticeSettings Settings { get; private set; } = null!;

    public List<Salon> Salons { get; } = [];

    public List<Chair> Chairs { get; } = [];

    public List<Person> People { get; } = [];

    public List<ServiceKind> Services { get; } = [];

    public List<BaseMaterial> Bases { get; } = [];

    public List<HoldWindowRule> HoldWindows { get; } = [];

    public List<Product> Products { get; } = [];

    public List<UnitKind> Kinds { get; } = [];

    public List<Workshop> Workshops { get; } = [];

    public List<Client> Clients { get; } = [];

    /// <summary>Settings and the rows every practice starts with.</summary>
    public Scene AddPractice(string name)
    {
        Settings = new PracticeSettings(Guid.CreateVersion7(), name, "GB", "en-GB");
        Settings.FinishGuide(now);
        db.PracticeSettings.Add(Settings);
        Bases.AddRange(TradeDefaults.MakeBases());
        Services.AddRange(TradeDefaults.MakeServices());
        HoldWindows.AddRange(TradeDefaults.MakeHoldWindows(Bases));
        db.AddRange([.. Bases, .. Services, .. HoldWindows, .. TradeDefaults.MakeWearFactors()]);
        return this;
    }

    /// <summary>A salon open Tuesday to Saturday, nine to six, with as many chairs.</summary>
    public Salon OpenSalon(string name, string zone, string currency, int chairs)
    {
        var salon = new Salon(Guid.CreateVersion7(), name, zone, currency);
        for (var day = IsoDayOfWeek.Tuesday; day <= IsoDayOfWeek.Saturday; day++)
            salon.SetHours(day, [(Guid.CreateVersion7(), new LocalTime(9, 0), new LocalTime(18, 0))]);
        Salons.Add(salon);
        db.Salons.Add(salon);
        for (var i = 1; i <= chairs; i++)
        {
            var chair = new Chair(Guid.CreateVersion7(), salon.Id, $"Chair {i}", i);
            Chairs.Add(chair);
            db.Chairs.Add(chair);
        }
        return salon;
    }

    /// <summary>Someone who works in those salons; whoever takes clients may do every service.</summary>
    public Person Hire(string name, StaffRole role, params ReadOnlySpan<Salon> salons)
    {
        var person = new Person(Guid.CreateVersion7(), name, role);
        person.SetSalons([.. salons.ToArray().Select(s => (Guid.CreateVersion7(), s.Id))]);
        if (role is StaffRole.Owner or StaffRole.Stylist)
            person.SetSkills([.. Services.Select(s => (Guid.CreateVersion7(), s.Id))]);
        People.Add(person);
        db.People.Add(person);
        return person;
    }

    public Product AddProduct(string name, ProductKind kind, string chemistry, params ReadOnlySpan<string> lots)
    {
        var product = new Product(Guid.CreateVersion7(), name, kind);
        product.Edit(name, kind, chemistry, labelCureHours: null);
        foreach (var lot in lots)
            product.ReceiveLot(Guid.CreateVersion7(), lot, expiresOn: null);
        Products.Add(product);
        db.Products.Add(product);
        return product;
    }

    public UnitKind AddUnitKind(string name, string baseName, string workshop)
    {
        var maker = Workshops.FirstOrDefault(w => w.Name == workshop);
        if (maker is null)
        {
            maker = new Workshop(Guid.CreateVersion7(), workshop);
            Workshops.Add(maker);
            db.Workshops.Add(maker);
        }
        var kind = new UnitKind(Guid.CreateVersion7(), name, Bases.Single(b => b.Name == baseName).Id, maker.Id);
        Kinds.Add(kind);
        db.UnitKinds.Add(kind);
        return kind;
    }

    public Client AddClient(string code, string name, Salon salon, string? phone = null, string? email = null)
    {
        var client = new Client(Guid.CreateVersion7(), code, name, salon.Id);
        client.SetContact(phone, email);
        Clients.Add(client);
        db.Clients.Add(client);
        db.FindWords.AddRange(FindWordIndexer.For(client));
        return client;
    }

    /// <summary>A unit in house, accepted and ready to be bonded, that arrived on that day.</summary>
    public HairSystem AddUnit(Client client, UnitKind kind, LocalDate arrived)
    {
        var unit = new HairSystem(Guid.CreateVersion7(), $"{client.Code}-{++_serials}", client.Id, kind.Id, arrived.PlusWeeks(-10));
        unit.ImportState(
            UnitState.Accepted,
            new UnitDates
            {
                SpecifiedOn = arrived.PlusWeeks(-10),
                OrderedOn = arrived.PlusWeeks(-10),
                ArrivedOn = arrived,
                InspectedOn = arrived,
                AcceptedOn = arrived,
            },
            retiredBecause: null,
            remadeTimes: 0
        );
        unit.PlaceAtSalon(client.HomeSalonId);
        db.HairSystems.Add(unit);
        db.FindWords.Add(FindWordIndexer.For(unit));
        return unit;
    }

    /// <summary>The unit is bonded on that day, as the due rule would have it.</summary>
    public Bond AddBond(Client client, HairSystem unit, LocalDate on, Product adhesive, Instant? at = null)
    {
        unit.PutOn(on);
        var bond = new Bond(Guid.CreateVersion7(), unit.Id, client.Id, on, at, Attachment.Liquid, appliedBy: null);
        bond.SetProducts([(Guid.CreateVersion7(), new AppliedProduct(adhesive.Id, LotOf(adhesive), 3))], waitsKept: true);
        bond.SetDueWindow(DueCalculatorFor(client, unit, adhesive).WindowFor(on));
        db.Bonds.Add(bond);
        return bond;
    }

    public DueCalculator DueCalculatorFor(Client client, HairSystem unit, Product adhesive)
    {
        var kind = Kinds.Single(k => k.Id == unit.UnitKindId);
        var rule = HoldWindowRule.Choose(HoldWindows, kind.BaseMaterialId, adhesive.Id, Attachment.Liquid);
        var salon = Salons.Single(s => s.Id == client.HomeSalonId);
        return new DueCalculator(DueCalculator.OpeningDaysOf(salon), Settings, rule, client);
    }

    public Visit Book(Client client, ServiceKind service, Chair chair, Person person, Instant at)
    {
        var salon = Salons.Single(s => s.Id == chair.SalonId);
        var visit = new Visit(Guid.CreateVersion7(), client.Id, salon.Id, service.Id);
        visit.PutAt(service, at, chair.Id, person.Id, salon, [.. service.Steps.Select(_ => Guid.CreateVersion7())]);
        db.Visits.Add(visit);
        return visit;
    }

    public ServiceKind ServiceWithPurpose(ServicePurpose purpose) => Services.First(s => s.Purpose == purpose);

    /// <summary>The addresses of these clients stay as a new one is: they open dates only.</summary>
    public void LeaveUnconfirmed(params ReadOnlySpan<Client> clients) => _unconfirmed.AddRange(clients.ToArray().Select(c => c.Id));

    /// <summary>Saves, and confirms the addresses that were laid: whoever laid them knows whose they are.</summary>
    public async Task SaveAsync()
    {
        await using var own = db.Database.CurrentTransaction is null ? await db.Database.BeginTransactionAsync() : null;
        await db.SaveChangesAsync();
        await ConfirmAddressesAsync(db, now, _unconfirmed);
        if (own is not null)
            await own.CommitAsync();
    }

    /// <summary>What no person entered is taken to stand, as it does in a book that is older than confirming.</summary>
    public static Task<int> ConfirmAddressesAsync(ClinicDb db, Instant now, IReadOnlyCollection<Guid> but) =>
        db
            .OpeningAddresses.Where(a => a.ConfirmedAt == null && a.EndedAt == null && a.EnteredBy == null && !but.Contains(a.ClientId))
            .ExecuteUpdateAsync(set =>
                set.SetProperty(a => a.ConfirmedAt, now)
                    .SetProperty(a => a.ConfirmedHow, AddressConfirmationWay.Before)
                    .SetProperty(a => a.ToldAt, now)
            );

    private static Guid? LotOf(Product product) => product.Lots.Select(l => (Guid?)l.Id).FirstOrDefault();
}
