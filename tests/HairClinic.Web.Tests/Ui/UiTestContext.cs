using System.Globalization;
using Bunit;
using HairClinic.Web.Language;
using HairClinic.Web.Shell;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Localization;

namespace HairClinic.Web.Tests.Ui;

/// <summary>Renders our components with the localiser and a fixed reader's culture.</summary>
public class UiTestContext : BunitContext
{
    public UiTestContext()
    {
        CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo("en-GB");
        Services.AddLocalization();
        Services.AddSingleton(ShellSetup.Faults);
    }

    /// <summary>Says whether the page answers taps; call it after the last service is registered.</summary>
    protected void BeInteractive(bool interactive = true) =>
        Renderer.SetRendererInfo(new RendererInfo(interactive ? "Server" : "Static", interactive));

    protected IStringLocalizer<Words> Localizer => Services.GetRequiredService<IStringLocalizer<Words>>();
}
