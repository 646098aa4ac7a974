using HairClinic.Domain.Bonding;
using HairClinic.Domain.Chairs;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Visits;
using HairClinic.Web.Demo.Scenes;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Clients;

/// <summary>Two salons in two zones, a desk in the first, an owner of both, and what is needed to bond a unit.</summary>
public sealed class ClientScene
{
    public Salon Here { get; private set; } = null!;

    public Salon There { get; private set; } = null!;

    public Person Desk { get; private set; } = null!;

    /// <summary>Works in the other salon only.</summary>
    public Person DeskThere { get; private set; } = null!;

    public Person Stylist { get; private set; } = null!;

    public Product Adhesive { get; private set; } = null!;

    public UnitKind Lace { get; private set; } = null!;

    /// <summary>Somebody of that role in the first salon.</summary>
    public Person Of(StaffRole role) => Scene.People.First(p => p.Role == role);

    /// <summary>A stylist who works in the other salon only.</summary>
    public Person StylistThere => Scene.People.Single(p => p.Name == "Sable Nye");

    public Scene Scene { get; private set; } = null!;

    public LocalDate Today => Here.DayOf(Scene.Now);

    public Chair Chair => Scene.Chairs.First(c => c.SalonId == Here.Id);

    public Action<Scene> Laying(Action<ClientScene>? more = null) =>
        scene =>
        {
            Scene = scene.AddPractice("Practice under test");
            Here = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 2);
            There = scene.OpenSalon("Quay", "Europe/Madrid", "EUR", chairs: 1);
            Desk = scene.Hire("Desk", StaffRole.FrontDesk, Here);
            DeskThere = scene.Hire("Desk there", StaffRole.FrontDesk, There);
            Stylist = scene.Hire("Tam Rowe", StaffRole.Stylist, Here);
            scene.Hire("Ottilie Vane", StaffRole.Owner);
            scene.Hire("Marn Holt", StaffRole.Manager, Here);
            scene.Hire("Tess Wray", StaffRole.Trainee, Here);
            scene.Hire("Sable Nye", StaffRole.Stylist, There);
            Adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "water-based acrylic", "A-101");
            Lace = scene.AddUnitKind("French lace, full", "French lace", "Workshop North");
            more?.Invoke(this);
        };

    /// <summary>A visit to the other salon some days ago: it sees the client for ninety days.</summary>
    public Visit LetIn(Client client, int daysAgo = 3) =>
        Scene.Book(
            client,
            Scene.Services[0],
            Scene.Chairs.First(c => c.SalonId == There.Id),
            StylistThere,
            Scene.Now - Duration.FromDays(daysAgo)
        );

    /// <summary>A client with a unit that has been on the head for so many days.</summary>
    public (Client Client, HairSystem Unit, Bond Bond) Wearing(string code, string name, int days, Instant? at = null)
    {
        var client = Scene.AddClient(code, name, Here);
        var unit = Scene.AddUnit(client, Lace, Today.PlusDays(-days).PlusWeeks(-2));
        return (client, unit, Scene.AddBond(client, unit, Today.PlusDays(-days), Adhesive, at));
    }
}
