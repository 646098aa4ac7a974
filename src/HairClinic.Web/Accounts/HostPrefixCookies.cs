using Microsoft.AspNetCore.Authentication.Cookies;

namespace HairClinic.Web.Accounts;

/// <summary>
/// Sign-in cookies with the prefix that binds them to this host alone. Browsers take the prefix only from a secure origin, so over plain
/// http (a trial on one's own machine) the bare name is used.
/// </summary>
/// <param name="always">Where a proxy ends TLS and the program does not learn of it.</param>
public sealed class HostPrefixCookies(bool always) : ICookieManager
{
    private readonly ChunkingCookieManager _cookies = new();

    public string? GetRequestCookie(HttpContext context, string key) => _cookies.GetRequestCookie(context, Name(context, key));

    public void AppendResponseCookie(HttpContext context, string key, string? value, CookieOptions options) =>
        _cookies.AppendResponseCookie(context, Name(context, key), value, options);

    public void DeleteCookie(HttpContext context, string key, CookieOptions options) =>
        _cookies.DeleteCookie(context, Name(context, key), options);

    private string Name(HttpContext context, string key) => always || context.Request.IsHttps ? "__Host-" + key : key;
}
