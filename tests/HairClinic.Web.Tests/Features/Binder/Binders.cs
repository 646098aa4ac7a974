using System.Text;
using HairClinic.Domain.Practices;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Features.Binder;
using HairClinic.Web.Features.Binder.Sheets;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Web.Tests.Features.Binder;

/// <summary>What the tests of bringing and taking out a binder have in common.</summary>
internal static class Binders
{
    public static void TwoSalons(Scene scene)
    {
        scene.AddPractice("Practice under test");
        scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 2);
        scene.OpenSalon("Kite Street", "America/New_York", "USD", chairs: 1);
    }

    public static byte[] Csv(params ReadOnlySpan<string> lines) => Encoding.UTF8.GetBytes(string.Join("\r\n", lines.ToArray()) + "\r\n");

    public static SheetDraft Draft(SheetKind kind, byte[] file, DateOrder? dates = null)
    {
        var (draft, problem) = SheetDraft.FromFile(kind, file, "GB", "GBP");
        Assert.Null(problem);
        return draft! with { ChosenDates = dates };
    }

    public static Task<ImportReport> PreviewAsync(this TestClinic clinic, SheetDraft draft) =>
        clinic.UseAsync<Web.Features.Binder.Import, ImportReport>(
            clinic.Job,
            slice => slice.PreviewAsync(draft.Order!, TestContext.Current.CancellationToken)
        );

    public static Task<Web.Features.Binder.Import.Outcome> BringAsync(this TestClinic clinic, SheetDraft draft, Guid? key = null) =>
        clinic.UseAsync<Web.Features.Binder.Import, Web.Features.Binder.Import.Outcome>(
            clinic.Job,
            slice => slice.SaveAsync(key ?? Guid.CreateVersion7(), draft, createMissing: true, TestContext.Current.CancellationToken)
        );

    /// <summary>Brings the sheets in their order; each is clean, or its problems are the failure.</summary>
    public static async Task<IReadOnlyList<Web.Features.Binder.Import.Outcome>> BringAllAsync(
        this TestClinic clinic,
        IReadOnlyDictionary<SheetKind, byte[]> binder
    )
    {
        var outcomes = new List<Web.Features.Binder.Import.Outcome>();
        foreach (var kind in SheetKind.All.Where(binder.ContainsKey))
        {
            var draft = Draft(kind, binder[kind], DateOrder.YearMonthDay);
            Assert.Empty((await clinic.PreviewAsync(draft)).Problems.Select(Told));
            outcomes.Add(await clinic.BringAsync(draft));
        }
        return outcomes;
    }

    public static Task<IReadOnlyDictionary<SheetKind, byte[]>> ExportAsync(this TestClinic clinic) =>
        clinic.AsAsync<IReadOnlyDictionary<SheetKind, byte[]>>(
            clinic.Job,
            async services =>
            {
                var files = new Dictionary<SheetKind, byte[]>();
                await services
                    .GetRequiredService<Web.Features.Binder.Export>()
                    .WriteSheetsAsync(
                        SheetKind.All,
                        forPeople: false,
                        async (kind, write) =>
                        {
                            using var file = new MemoryStream();
                            await write(file);
                            files[kind] = file.ToArray();
                        },
                        TestContext.Current.CancellationToken
                    );
                return files;
            }
        );

    public static string Told(ImportProblem problem) =>
        problem.Expected is { } expected
            ? $"{problem.Row} {problem.Column} “{problem.Value}”: {expected}"
            : $"{problem.Row}: {problem.Refused}";

    public static void AssertSame(IReadOnlyDictionary<SheetKind, byte[]> expected, IReadOnlyDictionary<SheetKind, byte[]> actual)
    {
        foreach (var kind in SheetKind.All)
            Assert.Equal(Encoding.UTF8.GetString(expected[kind]), Encoding.UTF8.GetString(actual[kind]));
    }
}
