using System.Globalization;
using AngleSharp.Dom;
using Bunit;
using HairClinic.Domain.Practices;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Visits;

/// <summary>A page as a person at the chair has it on the tablet, on the real book; it counts their taps.</summary>
internal sealed class ChairPage<TPage> : BunitContext
    where TPage : IComponent
{
    /// <param name="services">Of a scope in which that person acts.</param>
    public ChairPage(IServiceProvider services)
    {
        CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo("en-GB");
        Services.AddLocalization();
        Services.AddSingleton(services.GetRequiredService<IClock>());
        Services.AddFallbackServiceProvider(new Slices(services));
        JSInterop.Mode = JSRuntimeMode.Loose;
        Renderer.SetRendererInfo(new RendererInfo("Server", true));
    }

    public int Taps { get; private set; }

    public IRenderedComponent<TPage> Page { get; private set; } = null!;

    public static Task AsAsync(TestClinic clinic, Person person, Salon salon, Func<ChairPage<TPage>, Task> act) =>
        clinic.AsAsync(
            clinic.Acting(person, salon),
            async services =>
            {
                await using var page = new ChairPage<TPage>(services);
                await act(page);
                return true;
            }
        );

    public ChairPage<TPage> Open(Guid? visitId = null)
    {
        Page = Render<TPage>(p =>
        {
            if (visitId is { } id)
                p.TryAdd("VisitId", id);
        });
        return this;
    }

    /// <summary>One tap on a choice, by the words on it, in the question of that name.</summary>
    public void Choose(string question, string words)
    {
        Shown(() => Choice(question, words)).Change(true);
        Taps++;
    }

    public void Press(string words)
    {
        Shown(() => Page.FindAll("button").SingleOrDefault(b => b.TextContent.Trim() == words)).Click();
        Taps++;
    }

    public void Send()
    {
        Page.Find("form").Submit();
        Taps++;
    }

    public Task ShowsAsync(string text) =>
        Page.WaitForAssertionAsync(() => Assert.Contains(text, Page.Markup, StringComparison.Ordinal), TimeSpan.FromSeconds(20));

    public bool Has(string text) => Page.Markup.Contains(text, StringComparison.Ordinal);

    public IElement Find(string selector) => Page.Find(selector);

    private IElement? Choice(string question, string words) =>
        Page.FindAll("fieldset")
            .SingleOrDefault(f => f.QuerySelector("legend")!.TextContent.Trim().StartsWith(question, StringComparison.Ordinal))
            ?.QuerySelectorAll("label")
            .SingleOrDefault(l => l.TextContent.Trim().StartsWith(words, StringComparison.Ordinal))
            ?.QuerySelector("input");

    // What the tap before brings may not be drawn yet: the page draws when it comes to it, and a person waits to see it.
    private IElement Shown(Func<IElement?> what)
    {
        Page.WaitForState(() => what() is not null, TimeSpan.FromSeconds(20));
        return what()!;
    }

    // The slices come from the person's own scope, whole, with all they need.
    private sealed class Slices(IServiceProvider services) : IServiceProvider
    {
        public object? GetService(Type serviceType) =>
            serviceType.Namespace?.StartsWith("HairClinic.", StringComparison.Ordinal) == true ? services.GetService(serviceType) : null;
    }
}
