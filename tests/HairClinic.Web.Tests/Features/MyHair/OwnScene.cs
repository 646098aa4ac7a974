using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Visits;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Fence;
using NodaTime;

namespace HairClinic.Web.Tests.Features.MyHair;

/// <summary>One salon, one chair, one stylist; a client who wears a unit and is booked, and another client who is booked too.</summary>
public sealed class OwnScene
{
    /// <summary>A Friday, ten in the morning.</summary>
    public static readonly Instant BookedAt = Instant.FromUtc(2027, 2, 12, 10, 0);

    /// <summary>A time on the same day that is free.</summary>
    public static readonly Instant FreeAt = Instant.FromUtc(2027, 2, 12, 14, 0);

    /// <summary>An address of their own, for tests share one database.</summary>
    public string Address { get; } = $"{Guid.CreateVersion7():N}@example.test";

    public Salon Salon { get; private set; } = null!;

    public Client Client { get; private set; } = null!;

    /// <summary>An hour old, by their own address, which is confirmed.</summary>
    public ClientSignIn SignIn { get; private set; } = null!;

    public Client Other { get; private set; } = null!;

    public Bond Bond { get; private set; } = null!;

    public Visit Visit { get; private set; } = null!;

    public Visit OthersVisit { get; private set; } = null!;

    public ServiceKind Rebond { get; private set; } = null!;

    public void Lay(Scene scene)
    {
        scene.AddPractice("Practice under test");
        Salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
        var stylist = scene.Hire("Stylist", StaffRole.Stylist, Salon);
        var adhesive = scene.AddProduct("Adhesive under test", ProductKind.Adhesive, "water-based acrylic", "L1");
        var kind = scene.AddUnitKind("Lace under test", "French lace", "Workshop under test");
        Client = scene.AddClient("C-1", "Ada Fenwick", Salon, email: Address);
        SignIn = new ClientSignIn(Guid.NewGuid(), Client.Id, Address, scene.Now - Duration.FromHours(1));
        scene.Db.ClientSignIns.Add(SignIn);
        Other = scene.AddClient("C-2", "Bo Larch", Salon);
        Rebond = scene.ServiceWithPurpose(ServicePurpose.Rebond);
        Bond = scene.AddBond(Client, scene.AddUnit(Client, kind, new LocalDate(2027, 1, 5)), new LocalDate(2027, 1, 20), adhesive);
        Visit = scene.Book(Client, Rebond, scene.Chairs[0], stylist, BookedAt);
        OthersVisit = scene.Book(Other, Rebond, scene.Chairs[0], stylist, BookedAt + Duration.FromHours(2));
    }

    public ClientActor Acting(TestClinic clinic) => new(clinic.PracticeId, Client.Id, SignIn.Id);
}
