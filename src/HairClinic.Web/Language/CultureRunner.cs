namespace HairClinic.Web.Language;

/// <summary>Says something in somebody's own language where no request sets it: letters.</summary>
public static class CultureRunner
{
    /// <param name="language">A culture name; null says it in the language of the moment.</param>
    public static T WithCulture<T>(string? language, Func<T> say)
    {
        if (language is null)
            return say();
        var (culture, ui) = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(language);
            return say();
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (culture, ui);
        }
    }
}
