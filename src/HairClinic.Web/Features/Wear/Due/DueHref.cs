namespace HairClinic.Web.Features.Wear;

/// <summary>The list's addresses: every filter is in them, so that a page can be kept, sent and gone back to.</summary>
public static class DueHref
{
    /// <summary>An unknown word means the whole list: a mistyped address hides nobody.</summary>
    public static DuePart FromQueryValue(string? word) => Enum.GetValues<DuePart>().FirstOrDefault(part => ToQueryValue(part) == word);

    public static string ToQueryValue(DuePart part) => JsonNamingPolicy.KebabCaseLower.ConvertName(part.ToString());

    /// <param name="after">A cursor of the part's kind.</param>
    /// <param name="contact">The bond whose row is opened.</param>
    /// <param name="row">The place on the page to stay at.</param>
    public static string Build(DuePart part, bool allSalons, object? after = null, Guid? contact = null, int? row = null)
    {
        List<string> query = [];
        if (part != DuePart.All)
            query.Add($"part={ToQueryValue(part)}");
        if (allSalons)
            query.Add("salon=all");
        if (after is not null)
            query.Add($"after={after}");
        if (contact is not null)
            query.Add($"contact={contact:N}");
        return (query.Count == 0 ? "/due" : $"/due?{string.Join('&', query)}") + (row is null ? "" : $"#r{row}");
    }
}
