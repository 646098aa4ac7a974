using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.Features;

namespace HairClinic.Web.Shell.Limits;

/// <summary>The form of a request that came from a page of ours. One without our mark, or one that cannot be read, is none.</summary>
public static class VerifiedFormReader
{
    /// <remarks>Whoever checked the mark has read it already; the framework throws at those who read one without.</remarks>
    public static IFormCollection? Read(HttpContext context) =>
        context.Features.Get<IAntiforgeryValidationFeature>() is { IsValid: true } ? context.Features.Get<IFormFeature>()?.Form : null;
}
