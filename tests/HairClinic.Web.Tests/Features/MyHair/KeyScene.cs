using System.Text.RegularExpressions;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Fence;
using HairClinic.Web.Tests.Features.Privacy;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Edit = HairClinic.Web.Features.Clients.EditClient;
using Guardians = HairClinic.Web.Features.Clients.KeepGuardians;
using Merge = HairClinic.Web.Features.Clients.MergeClients;
using OpenLinks = HairClinic.Web.Features.MyHair.OpenLink;

namespace HairClinic.Web.Tests.Features.MyHair;

/// <summary>A client who confided everything, with an address that is confirmed, and whoever would like to read it.</summary>
public sealed class KeyScene
{
    /// <summary>The client's own, confirmed.</summary>
    public const string Theirs = "zoe.quillfeather@example.test";

    private readonly PrivacyScene _scene = new();

    public Client Client => _scene.Client;

    public static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async Task<TestClinic> OpenAsync(PgServer server)
    {
        var clinic = await _scene.OpenAsync(server);
        await clinic.ReadAsync(async db =>
        {
            await db.Photos.ForEachAsync(p => p.SetShared(true), Cancel);
            return await db.SaveChangesAsync(Cancel);
        });
        // What was laid is no letter of these tests.
        await clinic.ReadAsync(db => db.WorkItems.ExecuteDeleteAsync(Cancel));
        return clinic;
    }

    public PersonActor Desk(TestClinic clinic) => Of(clinic, StaffRole.FrontDesk);

    public PersonActor Of(TestClinic clinic, StaffRole role) => clinic.Acting(_scene.Given.Of(role), _scene.Given.Here);

    /// <summary>Works in the other salon only.</summary>
    public PersonActor StylistThere(TestClinic clinic) => clinic.Acting(_scene.Given.StylistThere, _scene.Given.There);

    public PersonActor Owner(TestClinic clinic) => _scene.AsOwner(clinic);

    /// <summary>The other salon sees them too, as after a visit there.</summary>
    public Task<int> LetInThereAsync(TestClinic clinic) =>
        clinic.ReadAsync(db =>
        {
            db.ClientGrants.Add(
                new(
                    Guid.CreateVersion7(),
                    Client.Id,
                    _scene.Given.There.Id,
                    clinic.Clock.GetCurrentInstant(),
                    clinic.Clock.GetCurrentInstant() + NodaTime.Duration.FromDays(90),
                    _scene.Owner.Id,
                    "They travel"
                )
            );
            return db.SaveChangesAsync(Cancel);
        });

    public static Task<Guid> IdOfAsync(TestClinic clinic, string code) =>
        clinic.ReadAsync(db => db.Clients.Where(c => c.Code == code).Select(c => c.Id).SingleAsync(Cancel));

    public async Task EditAsync(TestClinic clinic, PersonActor actor, string? email, Guid? clientId = null)
    {
        var id = clientId ?? Client.Id;
        var input = (await clinic.UseAsync<Edit, Edit.Screen?>(actor, s => s.OpenAsync(id, Cancel)))!.Saved with { Email = email };
        await clinic.UseAsync<Edit, Edit.Outcome>(actor, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
    }

    public async Task<Guid> AddGuardianAsync(TestClinic clinic, PersonActor actor, string email, Guid? clientId = null)
    {
        var key = Guid.CreateVersion7();
        var input = new Guardians.Input
        {
            ClientId = clientId ?? Client.Id,
            Name = "Somebody Close",
            Email = email,
        };
        await clinic.UseAsync<Guardians, Guardians.Outcome>(actor, s => s.SaveAsync(key, input, Cancel));
        return key;
    }

    public Task TakeGuardianAwayAsync(TestClinic clinic, PersonActor actor, Guid guardian) =>
        clinic.UseAsync<Guardians, Guardians.Outcome>(
            actor,
            s => s.SaveAsync(Guid.CreateVersion7(), new() { ClientId = Client.Id, TakeAway = guardian }, Cancel)
        );

    public static Task MergeAsync(TestClinic clinic, PersonActor actor, Guid kept, Guid folded) =>
        clinic.UseAsync<Merge, Merge.Outcome>(actor, s => s.SaveAsync(Guid.CreateVersion7(), new(kept, folded), Cancel));

    /// <summary>Asks for a link and opens it, as whoever reads at that address.</summary>
    /// <returns>Null where no link came, or it opened nothing.</returns>
    public static async Task<ClientActor?> SignInAsync(TestClinic clinic, string email) =>
        await LinkAsync(clinic, email) is { } token
            ? await clinic.UseAsync<OpenLinks, ClientActor?>(clinic.Job, async s => (await s.SaveAsync(token, Cancel))?.SignIn.Actor)
            : null;

    public static async Task<string?> LinkAsync(TestClinic clinic, string email)
    {
        await clinic.AsAsync(
            clinic.Job,
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                await services.GetRequiredService<SignInLinkStore>().AnswerRequestAsync(db, email, Cancel);
                return await db.SaveChangesAsync(Cancel);
            }
        );
        var letter = (await LettersAsync(clinic)).LastOrDefault(l =>
            l.To == email && l.Text.Contains("open-link", StringComparison.Ordinal)
        );
        return letter is null ? null : TokenIn(letter);
    }

    public static string TokenIn(Letter letter) => Regex.Match(letter.Text, @"token=([\w-]+)").Groups[1].Value;

    /// <summary>As the work loop does: what changed is told.</summary>
    /// <returns>The letters that are to be sent, oldest first.</returns>
    public static async Task<IReadOnlyList<Letter>> TellAsync(TestClinic clinic)
    {
        await clinic.UseAsync<AddressChangeNotices, int>(clinic.Job, l => l.RunAsync(Cancel));
        return await LettersAsync(clinic);
    }

    public static async Task<IReadOnlyList<Letter>> LettersAsync(TestClinic clinic)
    {
        var items = await clinic.ReadAsync(db =>
            db.WorkItems.AsNoTracking()
                .Where(w => w.Kind == WorkKind.SendMail)
                .OrderBy(w => w.AskedAt)
                .ThenBy(w => w.Id)
                .ToListAsync(Cancel)
        );
        return [.. items.Select(WorkItemFactory.ReadBody<Letter>)];
    }

    /// <summary>As if somebody had confirmed it, or all that stand.</summary>
    public static Task<int> ConfirmAsync(ClinicDb db, string? email = null) =>
        db
            .OpeningAddresses.Where(a => a.EndedAt == null && a.ConfirmedAt == null && (email == null || a.Email == email))
            .ExecuteUpdateAsync(
                set =>
                    set.SetProperty(a => a.ConfirmedAt, TestClinic.UsualNow)
                        .SetProperty(a => a.ConfirmedHow, AddressConfirmationWay.Before),
                Cancel
            );

    public static Task<OpeningAddress> AddressAsync(TestClinic clinic, string email) =>
        clinic.ReadAsync(db =>
            db.OpeningAddresses.AsNoTracking().Where(a => a.Email == email).OrderByDescending(a => a.EnteredAt).FirstAsync(Cancel)
        );
}
