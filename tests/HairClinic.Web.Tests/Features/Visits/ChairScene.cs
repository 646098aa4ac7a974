using HairClinic.Domain.Bonding;
using HairClinic.Domain.Chairs;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Visits;
using HairClinic.Web.Demo.Scenes;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Visits;

/// <summary>One client in the chair: a unit worn for 29 days, a spare, an adhesive with an open and an expired lot.</summary>
internal sealed class ChairScene
{
    public static readonly LocalDate BondedOn = new(2027, 1, 5);
    public static readonly LocalDate Today = new(2027, 2, 3);

    public Salon Salon { get; private set; } = null!;
    public Chair Chair { get; private set; } = null!;
    public Person Stylist { get; private set; } = null!;
    public Person Colleague { get; private set; } = null!;
    public Person Owner { get; private set; } = null!;

    /// <summary>Has no visit of this client.</summary>
    public Person Trainee { get; private set; } = null!;

    public Client Client { get; private set; } = null!;
    public HairSystem Worn { get; private set; } = null!;
    public HairSystem Spare { get; private set; } = null!;
    public Product Adhesive { get; private set; } = null!;
    public ProductLot Expired { get; private set; } = null!;
    public ProductLot Open { get; private set; } = null!;
    public Bond? Bond { get; private set; }
    public Visit Visit { get; private set; } = null!;
    public Visit Next { get; private set; } = null!;
    public UnitKind Kind { get; private set; } = null!;

    public ServicePurpose Purpose { get; init; } = ServicePurpose.Rebond;
    public bool Bonded { get; init; } = true;

    public void Lay(Scene scene)
    {
        scene.AddPractice("Practice under test");
        Salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 2);
        Chair = scene.Chairs[0];
        Stylist = scene.Hire("Mara Quill", StaffRole.Stylist, Salon);
        Colleague = scene.Hire("Tove Brandt", StaffRole.Stylist, Salon);
        Owner = scene.Hire("Ottilie Vane", StaffRole.Owner);
        Trainee = scene.Hire("Tess Wray", StaffRole.Trainee, Salon);
        Kind = scene.AddUnitKind("Lace, size M", "French lace", "Workshop W");
        Adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "water-based acrylic");
        Expired = Adhesive.ReceiveLot(Guid.CreateVersion7(), "A-0", Today.PlusDays(-1));
        Open = Adhesive.ReceiveLot(Guid.CreateVersion7(), "A-1", Today.PlusDays(200));
        Client = scene.AddClient("C-1", "Ada Fenwick", Salon);
        Worn = scene.AddUnit(Client, Kind, BondedOn.PlusDays(-20));
        Spare = scene.AddUnit(Client, Kind, BondedOn.PlusDays(-20));
        Bond = Bonded ? scene.AddBond(Client, Worn, BondedOn, Adhesive) : null;
        Visit = scene.Book(Client, scene.ServiceWithPurpose(Purpose), Chair, Stylist, scene.Now - Duration.FromMinutes(60));
    }

    /// <summary>Another visit of the same client, later on the same day.</summary>
    public void BookNext(Scene later)
    {
        Next = new Visit(Guid.CreateVersion7(), Client.Id, Salon.Id, Visit.ServiceKindId);
        Next.PutAt([(SegmentKind.HandsOn, 60)], later.Now + Duration.FromHours(4), Chair.Id, Colleague.Id, Salon, [Guid.CreateVersion7()]);
        later.Db.Visits.Add(Next);
    }
}
