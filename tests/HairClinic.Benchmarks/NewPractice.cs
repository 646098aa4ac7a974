using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Benchmarks;

/// <summary>A practice of a benchmark's own in the program's database.</summary>
internal static class NewPractice
{
    /// <param name="lay">Fills its book, as a job of that practice.</param>
    public static async Task<Guid> LayAsync(IServiceProvider services, Func<Guid, IServiceProvider, ClinicDb, Task> lay)
    {
        var practice = Guid.CreateVersion7();
        await services
            .GetRequiredService<PracticeJobRunner>()
            .RunJobAsync(
                practice,
                "lay",
                async scope =>
                {
                    var databases = scope.GetRequiredService<ClinicDbFactory>();
                    await using var unfenced = databases.OpenWithoutActor();
                    unfenced.Practices.Add(new PracticeRow(practice));
                    await unfenced.SaveChangesAsync();
                    await using var db = databases.Open();
                    await lay(practice, scope, db);
                    return true;
                }
            );
        return practice;
    }
}
