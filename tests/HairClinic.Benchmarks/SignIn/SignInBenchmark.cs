using System.Globalization;
using HairClinic.Domain.Practices;
using HairClinic.Web;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Demo.Scenes;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Slice = HairClinic.Web.Features.Accounts.SignIn;

namespace HairClinic.Benchmarks.SignIn;

/// <summary>A wrong password for a name nobody has beside one for a name somebody has: the time an answer takes must not tell them apart.</summary>
internal static class SignInBenchmark
{
    private const int Turns = 25;
    private const double Apart = 1.15;

    public static async Task RunAsync(Report report)
    {
        var folder = Directory.CreateTempSubdirectory("hairclinic-sign-in-");
        File.SetUnixFileMode(folder.FullName, (UnixFileMode)0b111_101_101);
        try
        {
            await using var app = Clinic.Build([
                "--applicationName",
                "HairClinic.Web",
                "--data",
                folder.FullName,
                "--Logging:LogLevel:Default=Warning",
            ]);
            await app.Services.GetRequiredService<DatabaseLifetime>().OpenAsync(CancellationToken.None);
            await NewPractice.LayAsync(app.Services, LayAsync);
            var (known, unknown) = (0, 0);
            var times = await Rounds.TimeAsync(
                Turns,
                // Each name once: what makes repeated tries slow is another matter.
                () => TryAsync(app.Services, $"person{known++}"),
                () => TryAsync(app.Services, $"nobody{unknown++}")
            );
            var (somebody, nobody) = (Rounds.Median(times[0]), Rounds.Median(times[1]));
            var ratio = Math.Max(somebody, nobody) / Math.Min(somebody, nobody);
            report.Say(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"sign-in refused: somebody's name {somebody:F1} ms, nobody's {nobody:F1} ms at the median of {Turns}; ratio {ratio:F2}, goal at most {Apart}: {(ratio <= Apart ? "met" : "not met")}"
                )
            );
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static async Task TryAsync(IServiceProvider services, string name)
    {
        await using var scope = services.CreateAsyncScope();
        var outcome = await scope
            .ServiceProvider.GetRequiredService<Slice>()
            .SaveAsync(new Slice.Input { Name = name, Password = "another long guess" }, CancellationToken.None);
        if (outcome != Slice.Outcome.Refused)
            throw new InvalidOperationException($"{name} was not refused: {outcome}.");
    }

    private static async Task LayAsync(Guid practice, IServiceProvider scope, ClinicDb db)
    {
        var scene = new Scene(db, NodaTime.SystemClock.Instance.GetCurrentInstant()).AddPractice("Many people");
        var salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
        Person[] people = [.. Enumerable.Range(0, Turns + 1).Select(i => scene.Hire($"Person {i}", StaffRole.Stylist, salon))];
        await scene.SaveAsync();
        var users = scope.GetRequiredService<UserManager<AppUser>>();
        foreach (var (person, i) in people.Select((p, i) => (p, i)))
        {
            var user = new AppUser
            {
                Id = Guid.CreateVersion7(),
                UserName = $"person{i}",
                PracticeId = practice,
                PersonId = person.Id,
                AtSalonId = salon.Id,
            };
            if ((await users.CreateAsync(user, "long lavender evenings")) is { Succeeded: false } refused)
                throw new InvalidOperationException(refused.ToString());
        }
    }
}
