namespace HairClinic.Web.Features.Wear.Due;

/// <summary>The list's addresses: every filter is in them, so that a page can be kept, sent and gone back to.</summary>
public static class DueHref
{
    public static string To(DuePart part, bool allSalons, DueCursor? after = null)
    {
        List<string> query = [];
        if (part != DuePart.All)
            query.Add($"part={DuePartWords.Word(part)}");
        if (allSalons)
            query.Add("salon=all");
        if (after is not null)
            query.Add($"after={after}");
        return query.Count == 0 ? "/due" : $"/due?{string.Join('&', query)}";
    }
}
