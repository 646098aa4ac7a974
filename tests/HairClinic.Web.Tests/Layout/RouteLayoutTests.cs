using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Components;

namespace HairClinic.Web.Tests.Layout;

public sealed partial class RouteLayoutTests
{
    private static readonly Type[] Pages =
    [
        .. typeof(Clinic).Assembly.GetTypes().Where(t => t.GetCustomAttributes<RouteAttribute>().Any()),
    ];

    [Fact]
    public void The_last_word_of_a_route_is_its_folder_in_kebab_case_and_add_where_it_has_no_id_to_edit()
    {
        var offenders =
            from page in SourceTree.Files(SourceTree.Features, ".razor")
            from Match route in Route().Matches(File.ReadAllText(page))
            let word = route.Groups[1].Value.Split('/').LastOrDefault(part => part.Length > 0 && !part.StartsWith('{'))
            let folder = SourceTree.Kebab(Path.GetFileName(Path.GetDirectoryName(page))!)
            // What is edited by its id is added without one.
            let added = File.ReadAllText(page).Contains($"/{folder}/{{Id:guid}}\"", StringComparison.Ordinal)
            let adds = added && !route.Value.Contains("{Id:guid}", StringComparison.Ordinal)
            where word != (adds ? folder.Replace("edit-", "add-", StringComparison.Ordinal) : folder)
            select $"{SourceTree.Named(page)}: {route.Groups[1].Value}";

        Assert.Empty(offenders);
    }

    [Fact]
    public void Each_page_names_a_rule_about_who_may_open_it()
    {
        var offenders =
            from page in Pages
            where page.Namespace!.StartsWith("HairClinic.Web.Features.", StringComparison.Ordinal)
            where !page.GetCustomAttributes<AllowAnonymousAttribute>().Any()
            where page.GetCustomAttributes<AuthorizeAttribute>().All(a => a.Policy is null)
            select page.FullName;

        Assert.Empty(offenders);
    }

    [Fact]
    public void A_clients_own_pages_take_no_client_id()
    {
        var offenders =
            from page in Pages
            where page.GetCustomAttributes<AuthorizeAttribute>().Any(a => a.Policy == Web.Shell.Policies.Client)
            from route in page.GetCustomAttributes<RouteAttribute>()
            where Regex.IsMatch(route.Template, "client", RegexOptions.IgnoreCase)
            select $"{page.FullName}: {route.Template}";

        Assert.Empty(offenders);
    }

    [GeneratedRegex(@"^@page ""([^""]+)""", RegexOptions.Multiline)]
    private static partial Regex Route();
}
