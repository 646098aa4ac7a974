using HairClinic.Web.Data;
using HairClinic.Web.Data.Accounts;
using HairClinic.Web.Practices;
using HairClinic.Web.Tests.Data.EmbeddedPostgres;
using HairClinic.Web.Workers;
using HairClinic.Web.Workers.Mail;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using NodaTime;
using Npgsql;

namespace HairClinic.Web.Tests.Workers;

/// <summary>The loop works for every practice of a database, so it gets one of its own.</summary>
public sealed class WorkLoopTests(PgServer server)
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
        var jobs = services.GetRequiredService<PracticeJobs>();
        await AskAsync(jobs, "trouble@example.test");
        await AskAsync(jobs, "calm@example.test");
        await AskAsync(jobs, "quiet@example.test");
        var loop = ActivatorUtilities.CreateInstance<WorkLoop>(services);

        await loop.StartAsync(token);
        for (var waited = 0; box.Sent.Count < 2 && waited < 300; waited++)
            await Task.Delay(100, token);
        await loop.StopAsync(token);

        Assert.Equal(["calm@example.test", "quiet@example.test"], box.Sent.Select(l => l.To).Order());
        Assert.True(loop.ExecuteTask!.IsCompleted);
    }

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
        services.Replace(ServiceDescriptor.Singleton<IMailRoute>(box));
        var provider = services.BuildServiceProvider();
        await provider.GetRequiredService<ClinicDatabase>().OpenAsync(TestContext.Current.CancellationToken);
        return provider;

        string In(string connection) => new NpgsqlConnectionStringBuilder(connection) { Database = name }.ConnectionString;
    }

    private static Task<bool> AskAsync(PracticeJobs jobs, string to)
    {
        var practice = Guid.CreateVersion7();
        return jobs.RunAsync(
            practice,
            "ask",
            async scope =>
            {
                await using var unfenced = scope.GetRequiredService<ClinicDbFactory>().OpenUnfenced();
                unfenced.Practices.Add(new PracticeRow(practice));
                await unfenced.SaveChangesAsync(TestContext.Current.CancellationToken);
                await using var db = scope.GetRequiredService<ClinicDbFactory>().Open();
                db.WorkItems.Add(WorkItems.Send(new(to, "Your appointment", "Thursday at ten."), SystemClock.Instance.GetCurrentInstant()));
                await db.SaveChangesAsync(TestContext.Current.CancellationToken);
                return true;
            }
        );
    }
}
