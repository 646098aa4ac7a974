namespace HairClinic.Web.Demo;

/// <summary>The invented practice: three salons in two time zones, the people in them, and what is on the shelf. None of it exists.</summary>
public static class DemoPractice
{
    public const string Name = "Rooksmere Practice";

    public static readonly DemoSalon Lane = new(
        "Rooksmere Lane",
        "Europe/London",
        "GBP",
        Chairs: 4,
        Clients: 130,
        RestsAfterDays: 3,
        Phone: "+442079460101"
    );
    public static readonly DemoSalon Court = new(
        "Tallow Court",
        "Europe/London",
        "GBP",
        Chairs: 3,
        Clients: 90,
        RestsAfterDays: 4,
        Phone: "+442079460202"
    );
    public static readonly DemoSalon Pier = new(
        "Harrow Pier",
        "America/New_York",
        "USD",
        Chairs: 3,
        Clients: 80,
        RestsAfterDays: 5,
        Phone: "+15185550199"
    );

    public static readonly IReadOnlyList<DemoSalon> Salons = [Lane, Court, Pier];

    public static readonly IReadOnlyList<DemoPerson> People =
    [
        new("Isolde Marwick", StaffRole.Owner, "owner", [Lane, Court, Pier]),
        new("Tobias Fernhollow", StaffRole.Manager, "manager", [Lane, Court, Pier]),
        new("Petra Quillon", StaffRole.FrontDesk, "desk", [Lane, Court]),
        new("Wendell Oakhurst", StaffRole.FrontDesk, "desk.pier", [Pier]),
        new("Imre Castellan", StaffRole.Stylist, "stylist", [Lane]),
        new("Saoirse Blenkin", StaffRole.Stylist, "saoirse", [Lane]),
        new("Anselm Dray", StaffRole.Stylist, "anselm", [Lane]),
        new("Yusra Penhale", StaffRole.Stylist, "yusra", [Court]),
        new("Corin Battersley", StaffRole.Stylist, "corin", [Court]),
        new("Delphine Oxbow", StaffRole.Stylist, "stylist.pier", [Pier]),
        new("Marlon Teasdale-Wu", StaffRole.Stylist, "marlon", [Pier]),
        new("Bryony Locke-Adeyemi", StaffRole.Trainee, "trainee", [Lane]),
    ];

    public static readonly IReadOnlyList<DemoProduct> Products =
    [
        new("Adhesive A, water-based acrylic", ProductKind.Adhesive, "water-based acrylic", Attachment.Liquid, "A"),
        new("Adhesive B, solvent-based acrylic", ProductKind.Adhesive, "solvent-based acrylic", Attachment.Liquid, "B"),
        new("Tape T, long-hold contour strips", ProductKind.Tape, "acrylic tape", Attachment.Tape, "T"),
    ];

    public static readonly IReadOnlyList<DemoUnitKind> Kinds =
    [
        new("French lace, full cap", "French lace", "Workshop North", 25),
        new("Thin skin top", "Thin skin 0.06 mm", "Workshop Quay", 20),
        // A spare of these is a rule since a short while: not everybody has theirs yet.
        new("Poly top, V-looped", "Poly 0.10 mm and more", "Workshop Quay", 15, Spares: 1),
        new("Mono top with rim", "Monofilament with poly rim", "Workshop North", 20),
        new("Lace front, skin back", "Lace front, skin back", "Workshop Alder", 13),
        new("Fine lace, full cap", "Fine lace", "Workshop Alder", 7),
    ];

    /// <summary>Each product comes in a new lot every quarter of a year.</summary>
    public static string LotOf(DemoProduct product, LocalDate on) => $"{product.LotLetter}{on.Year % 100:00}-{(on.Month - 1) / 3 + 1}";
}

public sealed record DemoProduct(string Name, ProductKind Kind, string Chemistry, Attachment Attachment, string LotLetter);

/// <summary>A salon of the demo; its number is of those kept for drama (Ofcom) and fiction (NANPA 555-01). It rests on one weekday, chosen so that the day the demo begins is a working one.</summary>
public sealed record DemoSalon(string Name, string Zone, string Currency, int Chairs, int Clients, int RestsAfterDays, string Phone)
{
    public static readonly LocalTime Opens = new(9, 0);
    public static readonly LocalTime Closes = new(18, 0);

    public IsoDayOfWeek RestDay(LocalDate today) => today.PlusDays(RestsAfterDays).DayOfWeek;

    public IReadOnlyList<DemoPerson> Stylists =>
        [.. DemoPractice.People.Where(p => p.Role == StaffRole.Stylist && p.Salons.Contains(this))];
}
