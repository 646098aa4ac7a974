using System.Globalization;
using Bunit;
using FluentValidation;
using HairClinic.Web.Fence;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Settings.Parts;

/// <summary>An edit page as somebody has it open, on the real book, while others save.</summary>
internal sealed class EditorPage<TPage> : BunitContext
    where TPage : IComponent
{
    private EditorPage(IServiceProvider services)
    {
        CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo("en-GB");
        Services.AddLocalization();
        // For the parts of a page that only some may see; who may open it at all is another test's.
        AddAuthorization();
        Services.AddSingleton(services.GetRequiredService<IClock>());
        Services.AddFallbackServiceProvider(new Slices(services));
        JSInterop.Mode = JSRuntimeMode.Loose;
        Renderer.SetRendererInfo(new RendererInfo("Server", true));
    }

    public IRenderedComponent<TPage> Page { get; private set; } = null!;

    /// <summary>The changes by others, one line each, as they are read.</summary>
    public string[] Meanwhile =>
        [
            .. Page.FindAll("[aria-labelledby=changed] li > span")
                .Select(line => string.Join(' ', line.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))),
        ];

    /// <param name="id">The parameter of the address, and its value.</param>
    public static Task OpenAsync(TestClinic clinic, PersonActor person, (string Name, Guid Id) id, Func<EditorPage<TPage>, Task> act) =>
        clinic.AsAsync(
            person,
            async services =>
            {
                await using var editor = new EditorPage<TPage>(services);
                editor.Page = editor.Render<TPage>(p => p.TryAdd(id.Name, id.Id));
                await editor.Page.WaitForStateAsync(() => editor.Page.FindAll("form").Count > 0, TimeSpan.FromSeconds(20));
                await act(editor);
                return true;
            }
        );

    public void Type(string field, string value) => Page.Find("#f-" + field).Change(value);

    public async Task SaveAsync(string shows)
    {
        await Page.Find("form").SubmitAsync();
        await Page.WaitForAssertionAsync(() => Assert.Contains(shows, Page.Markup, StringComparison.Ordinal), TimeSpan.FromSeconds(20));
    }

    public Task SaveAndGoAsync(string to)
    {
        Page.Find("form").Submit();
        var navigation = Services.GetRequiredService<NavigationManager>();
        return Page.WaitForAssertionAsync(() => Assert.EndsWith(to, navigation.Uri, StringComparison.Ordinal), TimeSpan.FromSeconds(20));
    }

    private sealed class Slices(IServiceProvider services) : IServiceProvider
    {
        public object? GetService(Type serviceType) =>
            serviceType.Namespace?.StartsWith("HairClinic.", StringComparison.Ordinal) == true
            || serviceType.IsGenericType && serviceType.GetGenericTypeDefinition() == typeof(IValidator<>)
                ? services.GetService(serviceType)
                : null;
    }
}
