using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.EmbeddedPostgres;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Sealing;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Demo.Scenes;
using Microsoft.AspNetCore.Builder;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using NodaTime;
using SystemClock = NodaTime.SystemClock;

namespace HairClinic.MailDrill;

/// <summary>A whole site on loopback with a database of its own, a mail server that does as it is told, and a practice whose clients wear units.</summary>
internal sealed class Practice : IAsyncDisposable
{
    private readonly EmbeddedServer _server;
    private readonly WebApplication _site;
    private readonly Guid _id = Guid.CreateVersion7();
    private List<Client> _clients = [];
    private readonly Dictionary<Guid, DueCalculator> _bases = [];
    private int _next;

    private Practice(EmbeddedServer server, WebApplication site) => (_server, _site) = (server, site);

    public static async Task<Practice> OpenAsync(string folder, int port, int mailPort, int clients)
    {
        var server = await EmbeddedServer.StartAsync(new(Path.Combine(folder, "data")), NullLogger.Instance);
        string[] settings =
        [
            "--applicationName",
            "HairClinic.Web",
            // Not the settings that lie beside the program: nothing is logged here.
            "--contentRoot",
            folder,
            $"--ConnectionStrings:Program={server.AsProgram}",
            $"--ConnectionStrings:Migrator={server.AsMigrator}",
            $"--Keys:File={Path.Combine(folder, "keys", "master.json")}",
            $"--Files:Folder={Path.Combine(folder, "files")}",
            "--Mail:Host=127.0.0.1",
            $"--Mail:Port={mailPort}",
            "--Mail:Tls=false",
            "--Mail:From=desk@practice.example",
            $"--urls=http://127.0.0.1:{port}",
            "--Logging:LogLevel:Default=None",
        ];
        var practice = new Practice(server, Web.Clinic.Build(settings));
        await practice._site.Services.GetRequiredService<DatabaseLifetime>().OpenAsync(CancellationToken.None);
        practice._site.Services.GetRequiredService<MasterKeys>().LoadAndCheck();
        await practice.LayAsync(clients);
        await practice._site.StartAsync();
        return practice;
    }

    public Task<T> AskAsync<T>(Func<ClinicDb, Task<T>> work) =>
        _site
            .Services.GetRequiredService<PracticeJobRunner>()
            .RunJobAsync(
                _id,
                "drill",
                async services =>
                {
                    await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                    return await work(db);
                }
            );

    /// <summary>Everything that is asked for by itself when many bonds are laid is done.</summary>
    public async Task SettleAsync()
    {
        for (var waited = 0; waited < 600; waited++, await Task.Delay(500))
        {
            if (
                await AskAsync(async db =>
                    !await db.WorkItems.AnyAsync(w => w.DoneAt == null) && !await db.Recalculations.AnyAsync(r => r.EndedAt == null)
                )
            )
                return;
        }
        throw new TimeoutException("The site did not come to rest within five minutes.");
    }

    /// <summary>The next client's unit is taken off and put on again today: their next order is planned anew.</summary>
    public Task RebondAsync()
    {
        var client = _clients[_next++ % _clients.Count].Id;
        return AskAsync(async db =>
        {
            var now = SystemClock.Instance.GetCurrentInstant();
            var bond = await db.Bonds.SingleAsync(b => b.ClientId == client && b.RemovedOn == null);
            var unit = await db.HairSystems.SingleAsync(u => u.Id == bond.HairSystemId);
            var today = now.InUtc().Date;
            await using var rebond = await db.Database.BeginTransactionAsync();
            Off(bond, unit, today);
            await db.SaveChangesAsync();
            unit.PutOn(today);
            var again = new Bond(Guid.CreateVersion7(), unit.Id, client, today, appliedAt: null, Attachment.Liquid, appliedBy: null);
            again.SetDueWindow(_bases[client].WindowFor(today));
            db.Bonds.Add(again);
            await db.SaveChangesAsync();
            await rebond.CommitAsync();
            return true;
        });
    }

    public async ValueTask DisposeAsync()
    {
        await _site.StopAsync();
        await _site.DisposeAsync();
        await _server.DisposeAsync();
    }

    private async Task LayAsync(int count)
    {
        await using (var scope = _site.Services.CreateAsyncScope())
        {
            await using var unfenced = scope.ServiceProvider.GetRequiredService<ClinicDbFactory>().OpenWithoutActor();
            unfenced.Practices.Add(new PracticeRow(_id));
            await unfenced.SaveChangesAsync();
        }
        await AskAsync(async db =>
        {
            var now = SystemClock.Instance.GetCurrentInstant();
            var today = now.InUtc().Date;
            var scene = new Scene(db, now).AddPractice("Practice of the drill");
            var salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 4);
            var adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "water-based acrylic", "L1");
            var kind = scene.AddUnitKind("Everyday", "French lace", "Workshop North");
            _clients = [.. Enumerable.Range(1, count).Select(i => scene.AddClient($"D-{i}", $"Drill Client {i}", salon))];
            foreach (var client in _clients)
            {
                var unit = scene.AddUnit(client, kind, today.PlusDays(-100));
                scene.AddUnit(client, kind, today.PlusDays(-20));
                Off(scene.AddBond(client, unit, today.PlusDays(-80), adhesive), unit, today.PlusDays(-45));
                Off(scene.AddBond(client, unit, today.PlusDays(-45), adhesive), unit, today.PlusDays(-10));
                scene.AddBond(client, unit, today.PlusDays(-10), adhesive);
                _bases[client.Id] = scene.DueCalculatorFor(client, unit, adhesive);
            }
            await scene.SaveAsync();
            return true;
        });
    }

    private static void Off(Bond bond, HairSystem unit, LocalDate day)
    {
        bond.Remove(day, RemovalReason.Scheduled);
        unit.TakeOff();
    }
}
