using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Photos;
using HairClinic.Web.Data.Sealing;
using HairClinic.Web.Features.MyHair;
using HairClinic.Web.Privacy;
using NetVips;

namespace HairClinic.Web.Demo;

/// <summary>What a few invented clients confided, and two pictures drawn by code: nobody's head.</summary>
public sealed class DemoConfidentialData(Sealer sealer, PhotoStore photos, ConsentStore consents)
{
    public async Task AddAsync(ClinicDb db, Instant now, LocalDate today, CancellationToken cancellation)
    {
        var clients = await db.Clients.OrderBy(c => c.Code).Take(3).ToListAsync(cancellation);
        var stylist = await db.People.Where(p => p.Role == StaffRole.Stylist).OrderBy(p => p.Name).FirstAsync(cancellation);
        var adhesive = await db.Products.OrderByDescending(p => p.Name).Select(p => p.Id).FirstAsync(cancellation);
        foreach (var (client, told) in clients.Zip(Histories(adhesive, today)))
        {
            var id = Guid.CreateVersion7();
            var plain = JsonSerializer.SerializeToUtf8Bytes(told, JsonColumns.Options);
            var closed = await sealer.SealAsync(db, client.Id, HealthAnswer.Purpose, id, plain, cancellation);
            db.HealthAnswers.Add(new HealthAnswer(id, client.Id, today, stylist.Id, now, closed));
            db.Clearances.AddRange(
                ClearanceRules.ClearancesFor(told, today).Select(f => new Clearance(Guid.CreateVersion7(), client.Id, id, f))
            );
        }
        // Casimir's own page can be opened in the demo, so that it shows what such a page holds.
        var casimir = await db.Clients.SingleAsync(c => c.Email == DemoLetters.CasimirsAddress, cancellation);
        foreach (var client in new[] { clients[0], casimir })
        {
            foreach (var (kind, shade) in new[] { (PhotoKind.Before, 60), (PhotoKind.After, 150) })
            {
                var pressed = await PhotoCompressor.CompressAsync(Draw(shade), cancellation);
                var file = await photos.StoreFilesAsync(db, client.Id, pressed, cancellation);
                var photo = new Photo(Guid.CreateVersion7(), client.Id, kind, today, today, file, stylist.Id, now);
                photo.SetShared(kind == PhotoKind.After);
                db.Photos.Add(photo);
            }
        }
        await AgreeAsync(db, casimir.Id, stylist.Id, cancellation);
        await db.SaveChangesAsync(cancellation);
    }

    private async Task AgreeAsync(ClinicDb db, Guid clientId, Guid askedBy, CancellationToken cancellation)
    {
        var shown = (await db.PracticeSettings.Select(s => s.Culture).SingleAsync(cancellation), 1);
        foreach (var subject in new[] { ConsentSubject.Treatment, ConsentSubject.Photos })
        {
            await consents.AddAsync(
                db,
                Guid.CreateVersion7(),
                clientId,
                subject,
                given: true,
                shown,
                askedBy,
                ConsentWay.OnTablet,
                cancellation
            );
        }
    }

    private static IEnumerable<HealthHistory> Histories(Guid adhesive, LocalDate today) =>
        [
            new()
            {
                SinceWhen = "About nine years",
                HowFast = "Slowly, from the crown",
                Medicines = "None",
                Habits = "Swims twice a week",
            },
            new()
            {
                SinceWhen = "Since a fever two winters ago",
                HowFast = "Within weeks",
                Signs = [LossSign.Sudden],
                AdviceGivenOn = today,
                Reactions = [new() { ProductId = adhesive, What = "Itched for a day" }],
            },
            new() { SinceWhen = "Since childhood", ScalpToday = [ScalpSign.Irritated] },
        ];

    // A grey oval on paper: enough to see where pictures stand.
    private static byte[] Draw(double shade)
    {
        using var paper = Image.Black(480, 480) + 235;
        using var drawn = paper.Cast(Enums.BandFormat.Uchar).Mutate(m => m.DrawCircle([shade], 240, 240, 170, fill: true));
        return drawn.PngsaveBuffer();
    }
}
