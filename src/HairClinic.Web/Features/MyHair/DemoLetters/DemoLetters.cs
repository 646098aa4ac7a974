using HairClinic.Web.Practices;
using HairClinic.Web.Workers.Mail;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Features.MyHair.DemoLetters;

/// <summary>The letters the demo practice would have sent. There is no such page for a real practice.</summary>
public sealed class DemoLetters(PracticeJobs jobs, FolderRoute folder, IMailRoute inUse)
{
    private const int Newest = 20;

    /// <returns>Null unless the only practice here is the demo and letters go to the folder.</returns>
    public async Task<IReadOnlyList<string>?> OpenAsync(CancellationToken cancellation)
    {
        if (!ReferenceEquals(inUse, folder) || await jobs.PracticeIdsAsync(cancellation) is not [var only])
            return null;
        var isDemo = await jobs.RunAsync(
            only,
            "letters",
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                return await db.PracticeSettings.AnyAsync(s => s.IsDemo, cancellation);
            }
        );
        if (!isDemo)
            return null;
        if (!Directory.Exists(folder.Folder))
            return [];
        var files = Directory.GetFiles(folder.Folder, "*.txt").OrderDescending().Take(Newest);
        return await Task.WhenAll(files.Select(f => File.ReadAllTextAsync(f, cancellation)));
    }
}
