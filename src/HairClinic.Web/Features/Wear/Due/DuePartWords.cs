namespace HairClinic.Web.Features.Wear;

/// <summary>How a part is written in the address bar and named on the screen.</summary>
public static class DuePartWords
{
    private static readonly (DuePart Part, string Word, string Name)[] All =
    [
        (DuePart.All, "all", "To call"),
        (DuePart.Lifted, "lifted", "Lifted"),
        (DuePart.Overdue, "overdue", "Overdue"),
        (DuePart.Open, "open", "Window open"),
        (DuePart.Opening, "opening", "Opening soon"),
        (DuePart.Booked, "booked", "Booked"),
        (DuePart.PutOff, "put-off", "Put off"),
        (DuePart.AtRisk, "at-risk", "May lack a good unit"),
    ];

    /// <summary>An unknown word means the whole list: a mistyped address hides nobody.</summary>
    public static DuePart Read(string? word) => All.FirstOrDefault(p => p.Word == word).Part;

    public static string Word(DuePart part) => All.Single(p => p.Part == part).Word;

    /// <summary>The localiser's key.</summary>
    public static string Name(DuePart part) => All.Single(p => p.Part == part).Name;
}
