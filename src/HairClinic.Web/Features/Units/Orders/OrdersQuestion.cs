namespace HairClinic.Web.Features.Units;

/// <summary>What of the way from draft to shelf is looked at.</summary>
public enum OrdersPart
{
    /// <summary>Everything from draft to shelf.</summary>
    All,

    /// <summary>Somebody has to ask after it today.</summary>
    ToChase,
    Drafts,
    AtWorkshop,
    ToInspect,

    /// <summary>Accepted, and still to be coloured and cut in.</summary>
    ToPrepare,
}

/// <summary>The list's filters; they stand in its address.</summary>
/// <param name="SalonId">Whose clients, or where it lies; null for all the salons of whoever looks.</param>
/// <param name="Page">From 1.</param>
public sealed record OrdersQuestion(OrdersPart Part, Guid? WorkshopId, Guid? SalonId, int Page)
{
    public static readonly OrdersQuestion Everything = new(OrdersPart.All, null, null, 1);

    public static string ToQueryValue(OrdersPart part) => JsonNamingPolicy.KebabCaseLower.ConvertName(part.ToString());

    /// <summary>An unknown word means the whole list: a mistyped address hides nothing.</summary>
    public static OrdersPart ParsePart(string? word) => Enum.GetValues<OrdersPart>().FirstOrDefault(p => ToQueryValue(p) == word);

    public string Href(string path = "/orders")
    {
        List<string> query = [];
        if (Part != OrdersPart.All)
            query.Add($"part={ToQueryValue(Part)}");
        if (WorkshopId is { } workshop)
            query.Add($"workshop={workshop}");
        if (SalonId is { } salon)
            query.Add($"salon={salon}");
        if (Page > 1)
            query.Add(string.Create(CultureInfo.InvariantCulture, $"page={Page}"));
        return query.Count == 0 ? path : $"{path}?{string.Join('&', query)}";
    }
}
