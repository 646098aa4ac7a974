using HairClinic.Domain.Chairs;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Visits;

/// <summary>
/// A salon with chairs, two stylists and a desk; the usual now is a Wednesday, ten o'clock in London, and
/// the salon opens from nine to six. All of it is invented.
/// </summary>
public sealed class VisitScene(string zone = "Europe/London", int chairs = 2)
{
    /// <summary>The day after the usual now.</summary>
    public static readonly LocalDate Thursday = new(2027, 2, 4);

    public Salon Salon { get; private set; } = null!;

    public List<Chair> Chairs { get; private set; } = null!;

    public Person Desk { get; private set; } = null!;

    public Person Mara { get; private set; } = null!;

    public Person Ivo { get; private set; } = null!;

    public Client Ada { get; private set; } = null!;

    public Client Bo { get; private set; } = null!;

    public ServiceKind Rebond { get; private set; } = null!;

    public ServiceKind Wash { get; private set; } = null!;

    /// <summary>A coat dries for twenty minutes in the middle.</summary>
    public ServiceKind Coats { get; private set; } = null!;

    public void Lay(Scene scene)
    {
        scene.AddPractice("Practice under test");
        Salon = scene.OpenSalon("Elm Row", zone, "GBP", chairs);
        Chairs = [.. scene.Chairs];
        Coats = new ServiceKind(Guid.CreateVersion7(), "Two coats", ServicePurpose.Rebond);
        Coats.SetSteps([
            (Guid.CreateVersion7(), SegmentKind.HandsOn, 30),
            (Guid.CreateVersion7(), SegmentKind.Wait, 20),
            (Guid.CreateVersion7(), SegmentKind.HandsOn, 10),
        ]);
        scene.Services.Add(Coats);
        scene.Db.ServiceKinds.Add(Coats);
        Desk = scene.Hire("Desk", StaffRole.FrontDesk, Salon);
        Ivo = scene.Hire("Ivo", StaffRole.Stylist, Salon);
        Mara = scene.Hire("Mara", StaffRole.Stylist, Salon);
        Ada = scene.AddClient("C-1", "Ada Fenwick", Salon, "+441632960001");
        Bo = scene.AddClient("C-2", "Bo Larch", Salon);
        Rebond = scene.Services.Single(s => s.Name == "Rebond");
        Wash = scene.Services.Single(s => s.Name == "Wash and style");
    }

    /// <summary>Puts what was laid before back into a scene that lays more.</summary>
    public Visit Book(Scene scene, ServiceKind service, int chair, Person person, Instant at, Client? client = null)
    {
        var visit = new Visit(Guid.CreateVersion7(), (client ?? Ada).Id, Salon.Id, service.Id);
        visit.PutAt(service, at, Chairs[chair].Id, person.Id, Salon, [.. service.Steps.Select(_ => Guid.CreateVersion7())]);
        scene.Db.Visits.Add(visit);
        return visit;
    }

    public Instant At(LocalDate day, int hour, int minute = 0) =>
        (day + new LocalTime(hour, minute)).InZoneStrictly(Salon.TimeZone).ToInstant();

    public PersonActor AtDesk(TestClinic clinic) => clinic.Acting(Desk, Salon);

    public static Task<Visit> ReadAsync(TestClinic clinic, Guid id) =>
        clinic.ReadAsync(db => db.Visits.Include(v => v.Segments).SingleAsync(v => v.Id == id, TestContext.Current.CancellationToken));
}
