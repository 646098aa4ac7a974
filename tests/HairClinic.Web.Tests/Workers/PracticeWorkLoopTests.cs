using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Mail;
using HairClinic.Web.Tests.EmbeddedPostgres;
using HairClinic.Web.Workers;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using NodaTime;
using Npgsql;

namespace HairClinic.Web.Tests.Workers;

/// <summary>The loop works for every practice of a database, so it gets one of its own.</summary>
public sealed class PracticeWorkLoopTests(PgServer server)
{
    [Fact]
    public async Task The_loop_does_the_work_of_every_practice_even_while_one_has_trouble()
    {
        var token = TestContext.Current.CancellationToken;
        var box = new Letterbox
        {
            Before = letter => letter.To.StartsWith("trouble", StringComparison.Ordinal) ? throw new IOException() : Task.CompletedTask,
        };
        await using var services = await OpenAsync(box);
        var jobs = services.GetRequiredService<PracticeJobRunner>();
        await AskAsync(jobs, "trouble@example.test");
        await AskAsync(jobs, "calm@example.test");
        await AskAsync(jobs, "quiet@example.test");
        var loop = ActivatorUtilities.CreateInstance<PracticeWorkLoop>(services);

        await loop.StartAsync(token);
        for (var waited = 0; box.Sent.Count < 2 && waited < 300; waited++)
            await Task.Delay(100, token);
        await loop.StopAsync(token);

        Assert.Equal(["calm@example.test", "quiet@example.test"], box.Sent.Select(l => l.To).Order());
        Assert.True(loop.ExecuteTask!.IsCompleted);
    }

    [Fact]
    public async Task A_loop_whose_site_was_taken_apart_says_nothing()
    {
        var token = TestContext.Current.CancellationToken;
        var log = new KeptLog<PracticeWorkLoop>();
        var services = await OpenAsync(new());
        using var loop = ActivatorUtilities.CreateInstance<PracticeWorkLoop>(services, log);
        await services.DisposeAsync();

        await loop.StartAsync(token);
        await Task.Delay(TimeSpan.FromSeconds(3), token);
        await loop.StopAsync(token);

        Assert.Empty(log.Lines);
    }

    [Fact]
    public async Task A_mail_server_that_hangs_delays_no_other_work()
    {
        var token = TestContext.Current.CancellationToken;
        using var hanging = new CancellationTokenSource();
        var box = new Letterbox { Before = _ => Task.Delay(Timeout.Infinite, hanging.Token) };
        await using var services = await OpenAsync(box);
        var jobs = services.GetRequiredService<PracticeJobRunner>();
        var practice = await AskAsync(jobs, "a@example.test");
        await WithAsync(jobs, practice, db => db.WorkItems.AddRange(Enumerable.Range(0, 20).Select(_ => Letter())));
        var loop = ActivatorUtilities.CreateInstance<PracticeWorkLoop>(services);
        await loop.StartAsync(token);
        await Task.Delay(TimeSpan.FromSeconds(3), token);

        List<double> waits = [];
        for (var i = 0; i < 5; i++)
        {
            var item = WorkItemFactory.RemoveFiles([], SystemClock.Instance.GetCurrentInstant());
            await WithAsync(jobs, practice, db => db.WorkItems.Add(item));
            waits.Add(await UntilDoneAsync(jobs, practice, item.Id));
        }
        await hanging.CancelAsync();
        await loop.StopAsync(token);

        // A second until somebody looks; a busy machine has its own pace, but nobody waits for a letter's forty seconds.
        Assert.All(waits, seconds => Assert.InRange(seconds, 0, 8));
        Assert.Empty(box.Sent);

        WorkItem Letter() => WorkItemFactory.SendLetter(new("a@example.test", "A", "B"), SystemClock.Instance.GetCurrentInstant());
    }

    private static async Task<double> UntilDoneAsync(PracticeJobRunner jobs, Guid practice, Guid id)
    {
        var since = System.Diagnostics.Stopwatch.StartNew();
        var done = false;
        while (!done && since.Elapsed < TimeSpan.FromSeconds(60))
        {
            await Task.Delay(50, TestContext.Current.CancellationToken);
            await WithAsync(jobs, practice, db => done = db.WorkItems.Any(w => w.Id == id && w.DoneAt != null));
        }
        return since.Elapsed.TotalSeconds;
    }

    private static Task<int> WithAsync(PracticeJobRunner jobs, Guid practice, Action<ClinicDb> work) =>
        jobs.RunJobAsync(
            practice,
            "test",
            async scope =>
            {
                await using var db = scope.GetRequiredService<ClinicDbFactory>().Open();
                work(db);
                return await db.SaveChangesAsync(TestContext.Current.CancellationToken);
            }
        );

    private async Task<ServiceProvider> OpenAsync(Letterbox box)
    {
        var name = $"loop_{Guid.NewGuid():N}";
        await Sql.AskAsync(server.Administrator, $"create database {name} owner hairclinic_migrator template template0");
        var services = new ServiceCollection();
        services.AddSingleton<IConfiguration>(
            new ConfigurationBuilder()
                .AddInMemoryCollection(
                    new Dictionary<string, string?>
                    {
                        ["ConnectionStrings:Program"] = In(server.Connections.Program),
                        ["ConnectionStrings:Migrator"] = In(server.Connections.Migrator!),
                        ["Keys:File"] = server.KeyFile,
                    }
                )
                .Build()
        );
        services.AddLogging();
        services.AddClinic();
        services.Replace(ServiceDescriptor.Singleton<IMailSender>(box));
        var provider = services.BuildServiceProvider();
        await provider.GetRequiredService<DatabaseLifetime>().OpenAsync(TestContext.Current.CancellationToken);
        return provider;

        string In(string connection) => new NpgsqlConnectionStringBuilder(connection) { Database = name }.ConnectionString;
    }

    private static Task<Guid> AskAsync(PracticeJobRunner jobs, string to)
    {
        var practice = Guid.CreateVersion7();
        return jobs.RunJobAsync(
            practice,
            "ask",
            async scope =>
            {
                await using var unfenced = scope.GetRequiredService<ClinicDbFactory>().OpenWithoutActor();
                unfenced.Practices.Add(new PracticeRow(practice));
                await unfenced.SaveChangesAsync(TestContext.Current.CancellationToken);
                await using var db = scope.GetRequiredService<ClinicDbFactory>().Open();
                db.WorkItems.Add(
                    WorkItemFactory.SendLetter(new(to, "Your appointment", "Thursday at ten."), SystemClock.Instance.GetCurrentInstant())
                );
                await db.SaveChangesAsync(TestContext.Current.CancellationToken);
                return practice;
            }
        );
    }
}
