using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Photos;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Sealing;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Privacy;
using HairClinic.Web.Tests.Features.Clients;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Privacy;

/// <summary>A client of whom the book holds something of every sort, and an owner who may take it out.</summary>
public sealed class PrivacyScene
{
    /// <summary>What would still tell of the client, wherever it stood.</summary>
    public static readonly string[] Telling =
    [
        "Zoë Quillfeather-Ångström",
        "Zozo-called",
        "441632960077",
        "zoe.quillfeather@example.test",
        "note about her scalp-hat",
        "reason she gave on the telephone",
        "remark-on-the-visit",
        "Q-7719",
        "quillfeather",
        "allergic to spider-plants",
    ];

    public ClientScene Given { get; } = new();

    public Person Owner { get; private set; } = null!;

    public Client Client { get; private set; } = null!;

    public HairSystem Unit { get; private set; } = null!;

    public Visit Ahead { get; private set; } = null!;

    public PhotoFile PhotoFile { get; private set; } = null!;

    public static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async Task<TestClinic> OpenAsync(PgServer server)
    {
        var clinic = await TestClinic.OpenAsync(server, Given.Laying(Lay));
        await clinic.AsAsync(
            clinic.Job,
            async services =>
            {
                await ConfideAsync(services, clinic);
                return true;
            }
        );
        clinic.Commands.Clear();
        return clinic;
    }

    public PersonActor AsOwner(TestClinic clinic) => clinic.Acting(Owner, Given.Here, Given.There);

    private void Lay(ClientScene scene)
    {
        var db = scene.Scene.Db;
        var now = scene.Scene.Now;
        scene.Scene.Hire("Manager there", StaffRole.Manager, scene.There);
        Owner = scene.Scene.Hire("Olive", StaffRole.Owner, scene.Here, scene.There);
        Client = scene.Scene.AddClient("Q-7719", "Zoë Quillfeather-Ångström", scene.Here, "+441632960077", "zoe.quillfeather@example.test");
        Client.Rename(Client.Name, "Zozo-called");
        Client.SetBirthDateAndNote(new LocalDate(1971, 3, 9), "note about her scalp-hat");
        Client.AddLifeEvent(
            new LifeEvent(
                Guid.CreateVersion7(),
                Client.Id,
                LifeEventKind.Celebration,
                scene.Today.PlusDays(30),
                scene.Today.PlusDays(31),
                away: false
            )
        );
        Client.AddCareFact(
            new CareFact(
                Guid.CreateVersion7(),
                Client.Id,
                scene.Today,
                new()
                {
                    Skin = SkinOiliness.Oily,
                    SwimsPerWeek = 2,
                    WashesPerWeek = 3,
                }
            )
        );
        Unit = scene.Scene.AddUnit(Client, scene.Lace, scene.Today.PlusDays(-40));
        scene.Scene.AddBond(Client, Unit, scene.Today.PlusDays(-20), scene.Adhesive);
        Ahead = scene.Scene.Book(
            Client,
            scene.Scene.ServiceWithPurpose(ServicePurpose.Rebond),
            scene.Chair,
            scene.Stylist,
            now + Duration.FromDays(7)
        );
        Ahead.SetNote("remark-on-the-visit");
        db.ContactNotes.Add(
            new ContactNote(
                Guid.CreateVersion7(),
                Client.Id,
                ContactOutcome.PutOff,
                now,
                scene.Desk.Id,
                scene.Today.PlusDays(3),
                "reason she gave on the telephone"
            )
        );
        db.Drafts.Add(new Draft(Guid.CreateVersion7(), scene.Desk.Id, "some form", Client.Id, """{"Text":"Zozo-called"}""", now));
        db.WriteKeys.Add(new WriteKey(Guid.CreateVersion7(), "some deed", [1], """{"Name":"Zoë Quillfeather-Ångström"}""", now));
        db.WorkItems.Add(WorkItemFactory.SendLetter(new Letter("zoe.quillfeather@example.test", "Your link", "Hello"), now));
        db.WorkItems.Add(WorkItemFactory.RefreshDueDates(Client.Id, now));
        db.SignInLinks.Add(
            new SignInLink(Guid.CreateVersion7().ToByteArray(), db.PracticeId, Client.Id, "zoe.quillfeather@example.test", now)
        );
        scene.Scene.AddClient("Q-7720", "Somebody Else", scene.Here, "+441632960078");
    }

    private async Task ConfideAsync(IServiceProvider services, TestClinic clinic)
    {
        await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
        var now = clinic.Clock.GetCurrentInstant();
        var sealer = services.GetRequiredService<Sealer>();
        var answerId = Guid.CreateVersion7();
        var answers = System.Text.Json.JsonSerializer.SerializeToUtf8Bytes(
            new HealthHistory { Allergies = "allergic to spider-plants" },
            JsonColumns.Options
        );
        var closed = await sealer.SealAsync(db, Client.Id, HealthAnswer.Purpose, answerId, answers, Cancel);
        db.HealthAnswers.Add(new HealthAnswer(answerId, Client.Id, Given.Today, Given.Stylist.Id, now, closed));
        PhotoFile = await services
            .GetRequiredService<PhotoStore>()
            .StoreFilesAsync(db, Client.Id, new PhotoCompressor.Pressed([1, 2, 3], [4, 5], 10, 10), Cancel);
        db.Photos.Add(
            new Photo(Guid.CreateVersion7(), Client.Id, PhotoKind.Before, Given.Today, Given.Today, PhotoFile, Given.Stylist.Id, now)
        );
        await services
            .GetRequiredService<ConsentStore>()
            .AddAsync(
                db,
                Guid.CreateVersion7(),
                Client.Id,
                Domain.Privacy.ConsentSubject.Photos,
                given: true,
                ("en-GB", 1),
                Given.Stylist.Id,
                Domain.Privacy.ConsentWay.OnTablet,
                Cancel
            );
        await db.SaveChangesAsync(Cancel);
    }
}
