using HairClinic.Web.Demo;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HairClinic.Browser.Tests;

/// <summary>The demo practice, filled once for all stories: a site on it begins with a copy of its own.</summary>
public sealed class DemoFolder : IAsyncDisposable
{
    /// <summary>When every story on the demo takes place: on a Wednesday morning.</summary>
    public static readonly Instant Now = Instant.FromUtc(2027, 2, 3, 10, 20);

    private readonly Lazy<Task<DirectoryInfo>> filled;

    public DemoFolder() => filled = new(FillAsync);

    /// <summary>The demo's practice, on every site that was opened.</summary>
    public Guid Practice { get; private set; }

    public async Task<Site> OpenSiteAsync() => await Site.OpenAsync(Now, like: await filled.Value);

    public async ValueTask DisposeAsync()
    {
        if (filled.IsValueCreated)
            (await filled.Value).Delete(recursive: true);
    }

    private async Task<DirectoryInfo> FillAsync()
    {
        var site = await Site.OpenAsync(Now);
        Practice = (await site.Services.GetRequiredService<DemoBook>().FillAsync(CancellationToken.None))!.PracticeId;
        return await site.CloseAsync();
    }
}
