using Microsoft.Extensions.Primitives;

namespace HairClinic.Web.Shell.Limits;

/// <summary>
/// No text holds the character 0, and PostgreSQL takes none. No key types it, so whoever sends it is told so before anything is done.
/// </summary>
public static class NullCharacterCheck
{
    public static Task CheckAsync(HttpContext context, RequestDelegate next)
    {
        var form = VerifiedFormReader.Read(context);
        if (IsWhole(context.Request.Query) && (form is null || IsWhole(form)))
            return next(context);
        context.Response.StatusCode = StatusCodes.Status400BadRequest;
        return context.Response.WriteAsync("What was sent holds a character that is not text. Nothing was saved.");
    }

    private static bool IsWhole(IEnumerable<KeyValuePair<string, StringValues>> fields) =>
        fields.All(field => !field.Key.Contains('\0') && field.Value.All(value => value?.Contains('\0') != true));
}
