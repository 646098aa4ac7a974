using System.Collections.Concurrent;
using System.Reflection;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Endpoints;

namespace HairClinic.Web.Shell.Limits;

/// <summary>
/// An address whose query does not fit its page leads nowhere, as one whose path does not fit. Without this the framework breaks over it.
/// </summary>
public static class QueryParameterTypeCheck
{
    private static readonly ConcurrentDictionary<Type, IReadOnlyList<(string Name, Type Type)>> Pages = new();

    public static Task CheckAsync(HttpContext context, RequestDelegate next)
    {
        if (context.Request.QueryString.HasValue && context.GetEndpoint()?.Metadata.GetMetadata<ComponentTypeMetadata>()?.Type is { } page)
        {
            var asked = Pages.GetOrAdd(page, Read);
            if (asked.Any(a => context.Request.Query[a.Name].Any(value => !string.IsNullOrEmpty(value) && !Fits(value, a.Type))))
            {
                context.Response.StatusCode = StatusCodes.Status404NotFound;
                return Task.CompletedTask;
            }
        }
        return next(context);
    }

    private static List<(string Name, Type Type)> Read(Type page) =>
        [
            .. from property in page.GetProperties(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic)
            let query = property.GetCustomAttribute<SupplyParameterFromQueryAttribute>()
            where query is not null
            let type = property.PropertyType.IsArray ? property.PropertyType.GetElementType()! : property.PropertyType
            select (query.Name ?? property.Name, Nullable.GetUnderlyingType(type) ?? type),
        ];

    // The types the framework reads from a query, read as it reads them.
    private static bool Fits(string value, Type type) =>
        type == typeof(Guid) ? Guid.TryParse(value, out _)
        : type == typeof(int) ? int.TryParse(value, NumberStyles.Integer, CultureInfo.InvariantCulture, out _)
        : type == typeof(long) ? long.TryParse(value, NumberStyles.Integer, CultureInfo.InvariantCulture, out _)
        : type == typeof(bool) ? bool.TryParse(value, out _)
        : type == typeof(decimal) ? decimal.TryParse(value, NumberStyles.Number, CultureInfo.InvariantCulture, out _)
        : type == typeof(double) ? double.TryParse(value, NumberStyles.Number, CultureInfo.InvariantCulture, out _)
        : type == typeof(DateOnly) ? DateOnly.TryParse(value, CultureInfo.InvariantCulture, out _)
        : type == typeof(TimeOnly) ? TimeOnly.TryParse(value, CultureInfo.InvariantCulture, out _)
        : type != typeof(DateTime) || DateTime.TryParse(value, CultureInfo.InvariantCulture, out _);
}
