using HairClinic.Web.Features.Settings;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Web.Tests.Security;

/// <summary>A page of managers that breaks, with an exception that quotes something, as parsers and drivers do.</summary>
public static class Broken
{
    public const string Page = "/practice/edit-practice";

    public static void Break(IWebHostBuilder builder, string words) =>
        builder.ConfigureTestServices(s => s.AddScoped<EditPractice>(_ => throw new FormatException($"“{words}” is no date.")));
}
