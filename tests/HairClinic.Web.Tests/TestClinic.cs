using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Logging;
using NodaTime;
using NodaTime.Testing;

namespace HairClinic.Web.Tests;

/// <summary>
/// A practice of its own for one test, in the database all tests share: nothing to clean, everything
/// parallel, and every test also proves the fence. Its clock stands still until moved.
/// </summary>
public sealed class TestClinic : IAsyncDisposable
{
    /// <summary>A Wednesday, ten in the morning in London.</summary>
    public static readonly Instant UsualNow = Instant.FromUtc(2027, 2, 3, 10, 0);

    private readonly ServiceProvider _services;

    private TestClinic(ServiceProvider services, Guid practiceId, FakeClock clock, CommandLog commands)
    {
        _services = services;
        PracticeId = practiceId;
        Clock = clock;
        Commands = commands;
    }

    public Guid PracticeId { get; }

    public FakeClock Clock { get; }

    /// <summary>Every command that reached the database since it was last cleared.</summary>
    public CommandLog Commands { get; }

    /// <param name="lay">What is given, in the words of the trade.</param>
    public static async Task<TestClinic> OpenAsync(PgServer server, Action<Scene>? lay = null, Instant? now = null)
    {
        var clock = new FakeClock(now ?? UsualNow);
        var commands = new CommandLog();
        var services = new ServiceCollection();
        services.AddSingleton<IConfiguration>(
            new ConfigurationBuilder()
                .AddInMemoryCollection(
                    new Dictionary<string, string?>
                    {
                        ["ConnectionStrings:Program"] = server.Connections.Program,
                        ["ConnectionStrings:Migrator"] = server.Connections.Migrator,
                        ["Keys:File"] = server.KeyFile,
                        ["Files:Folder"] = server.FilesFolder,
                        ["Mail:Folder"] = server.MailFolder,
                    }
                )
                .Build()
        );
        services.AddLogging(l => l.AddProvider(commands));
        services.AddClinic();
        services.Replace(ServiceDescriptor.Singleton<IClock>(clock));
        var provider = services.BuildServiceProvider();
        await provider.GetRequiredService<DatabaseLifetime>().OpenAsync(TestContext.Current.CancellationToken);

        var clinic = new TestClinic(provider, Guid.CreateVersion7(), clock, commands);
        await clinic.LayAsync(lay);
        commands.Clear();
        return clinic;
    }

    public JobActor Job => new(PracticeId, "test");

    public PersonActor Acting(Person person, params ReadOnlySpan<Salon> salons) =>
        new(PracticeId, person.Id, person.Role, [.. salons.ToArray().Select(s => s.Id)], salons.Length > 0 ? salons[0].Id : null);

    /// <summary>A client as they come by a link that was sent to their own address.</summary>
    public Task<ClientActor> SignInAsync(Guid clientId) =>
        ReadAsync(async db =>
        {
            var email = await db
                .Clients.Where(c => c.Id == clientId)
                .Select(c => c.Email)
                .SingleAsync(TestContext.Current.CancellationToken);
            var signIn = new ClientSignIn(Guid.NewGuid(), clientId, email!, Clock.GetCurrentInstant());
            db.ClientSignIns.Add(signIn);
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
            return new ClientActor(PracticeId, clientId, signIn.Id);
        });

    /// <summary>A person as they are right after they signed in.</summary>
    public async Task<PersonActor> SignInAsync(PersonActor person)
    {
        await using var scope = _services.CreateAsyncScope();
        await using var db = scope.ServiceProvider.GetRequiredService<ClinicDbFactory>().OpenWithoutActor();
        var name = $"{person.PersonId:N}";
        var user = new AppUser
        {
            Id = Guid.CreateVersion7(),
            PracticeId = PracticeId,
            PersonId = person.PersonId,
            UserName = name,
            NormalizedUserName = name.ToUpperInvariant(),
            SecurityStamp = name,
        };
        var session = new SignInSession(Guid.NewGuid(), user, SignInWay.Password, "A browser under test", Clock.GetCurrentInstant());
        db.AddRange(user, session);
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        return person with { SessionId = session.Id };
    }

    /// <summary>Runs one operation as somebody, in a scope of its own as a request would.</summary>
    public Task<T> AsAsync<T>(Actor actor, Func<IServiceProvider, Task<T>> work) =>
        _services.GetRequiredService<PracticeJobRunner>().RunAsAsync(actor, work);

    /// <summary>Calls a slice as somebody.</summary>
    public Task<T> UseAsync<TSlice, T>(Actor actor, Func<TSlice, Task<T>> call)
        where TSlice : notnull => AsAsync(actor, services => call(services.GetRequiredService<TSlice>()));

    /// <summary>Reads what is in the book, past the slices but inside the fence.</summary>
    public Task<T> ReadAsync<T>(Func<ClinicDb, Task<T>> read) =>
        AsAsync(
            Job,
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                return await read(db);
            }
        );

    /// <summary>Lays more into the practice.</summary>
    public async Task LayAsync(Action<Scene>? lay)
    {
        await AsAsync(
            Job,
            async services =>
            {
                await using var unfenced = services.GetRequiredService<ClinicDbFactory>().OpenWithoutActor();
                if (await unfenced.Practices.FindAsync([PracticeId], TestContext.Current.CancellationToken) is null)
                    unfenced.Practices.Add(new PracticeRow(PracticeId));
                await unfenced.SaveChangesAsync(TestContext.Current.CancellationToken);
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                var scene = new Scene(db, Clock.GetCurrentInstant());
                lay?.Invoke(scene);
                await scene.SaveAsync();
                return true;
            }
        );
    }

    public ValueTask DisposeAsync() => _services.DisposeAsync();
}
