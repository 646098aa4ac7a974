namespace HairClinic.Web.Features.Binder.Sheets;

public static class ClientColumns
{
    public static readonly SheetColumn Code = new("code", ColumnType.Code, "The practice's own code for the client", "C-0042")
    {
        Required = true,
        Synonyms =
        [
            "client code",
            "client number",
            "client no",
            "client id",
            "number",
            "no",
            "id",
            "card",
            "card number",
            "código",
            "código de cliente",
            "número de cliente",
            "ficha",
        ],
    };

    public static readonly SheetColumn Name = new("name", ColumnType.Text, "Full name", "Rosalind Achterberg")
    {
        Required = true,
        Synonyms = ["full name", "client name", "client", "nombre", "nombre completo", "cliente"],
    };

    public static readonly SheetColumn Called = new("called", ColumnType.Text, "What to call them in the waiting room", "Ros")
    {
        Synonyms = ["known as", "called in the waiting room", "preferred name", "first name", "nickname", "cómo llamarle", "apodo"],
    };

    public static readonly SheetColumn HomeSalon = new("home salon", ColumnType.Text, "The salon they belong to", "Harbour Street")
    {
        Required = true,
        Synonyms = ["salon", "branch", "location", "studio", "salón", "sucursal", "local"],
    };

    public static readonly SheetColumn Phone = new("phone", ColumnType.Phone, "Phone", "+442079460018")
    {
        Synonyms = ["mobile", "mobile phone", "cell", "cell phone", "telephone", "tel", "phone number", "teléfono", "móvil", "celular"],
    };

    public static readonly SheetColumn Email = new("email", ColumnType.Email, "E-mail address", "ros@example.org")
    {
        Synonyms = ["e-mail", "mail", "email address", "e-mail address", "correo", "correo electrónico"],
    };

    public static readonly SheetColumn PreferredDays = new(
        "preferred days",
        ColumnType.Weekdays,
        "Days on which they like to come",
        "Tue Thu"
    )
    {
        Synonyms = ["days", "weekdays", "preferred weekdays", "días", "días preferidos"],
    };

    public static readonly SheetColumn BirthDate = new("birth date", ColumnType.Date, "Date of birth", "1968-11-30")
    {
        Synonyms = ["date of birth", "born", "birthday", "dob", "fecha de nacimiento", "nacimiento"],
    };

    public static readonly SheetColumn SkinOiliness = new("skin oiliness", ColumnType.Choice, "How oily the scalp is", "normal")
    {
        Synonyms = ["oiliness", "skin", "skin type", "scalp", "scalp type", "piel", "tipo de piel"],
        Choices = [new("dry", "seca"), new("normal", "medium", "average"), new("oily", "greasy", "grasa")],
    };

    public static readonly SheetColumn Sweat = new("sweat", ColumnType.Choice, "How much they sweat", "normal")
    {
        Synonyms = ["sweating", "perspiration", "sudor", "sudoración"],
        Choices =
        [
            new("low", "light", "little", "baja", "poco"),
            new("normal", "medium", "average"),
            new("heavy", "high", "a lot", "alta", "mucho"),
        ],
    };

    public static readonly SheetColumn SwimsPerWeek = PerWeek(
        "swims per week",
        "Swims per week",
        "2",
        "swims",
        "swimming",
        "swimming per week",
        "natación",
        "natación por semana"
    );
    public static readonly SheetColumn WashesPerWeek = PerWeek(
        "washes per week",
        "Washes per week",
        "3",
        "washes",
        "washing",
        "washing per week",
        "lavados",
        "lavados por semana"
    );
    public static readonly SheetColumn HeatStylingPerWeek = PerWeek(
        "heat styling per week",
        "Times per week with hot tools",
        "1",
        "heat",
        "heat styling",
        "hot tools",
        "calor",
        "calor por semana"
    );

    public static readonly SheetColumn Note = new("note", ColumnType.Text, "Note for the front desk", "Rings in the evening")
    {
        Synonyms = ["notes", "remark", "remarks", "comment", "comments", "nota", "notas", "observaciones"],
    };

    // Care facts may be averages ("a swim every other week" is 0.5), hence decimal numbers.
    private static SheetColumn PerWeek(string name, string meaning, string example, params string[] synonyms) =>
        new(name, ColumnType.DecimalNumber, meaning, example) { Synonyms = synonyms, Most = 50 };
}
