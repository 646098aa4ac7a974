namespace HairClinic.Web.Features.Binder.Sheets;

public static class BondColumns
{
    public static readonly SheetColumn Serial = UnitColumns.Serial with { Meaning = "The code of the unit that was bonded" };
    public static readonly SheetColumn ClientCode = UnitColumns.ClientCode with
    {
        Meaning = "The code of the client who wears it",
        Required = true,
    };

    public static readonly SheetColumn AppliedOn = new("applied on", ColumnType.Date, "Day of the bond", "2025-04-02")
    {
        Required = true,
        Synonyms = ["applied", "bonded on", "bonded", "bond date", "date", "day", "fecha", "colocada el", "fecha de colocación"],
    };

    public static readonly SheetColumn AppliedAt = new("applied at", ColumnType.Time, "Time of the bond", "14:30")
    {
        Synonyms = ["time", "bond time", "bonded at", "hora"],
    };

    public static readonly SheetColumn Adhesive = new(
        "adhesive",
        ColumnType.Text,
        "The adhesive or tape",
        "Adhesive A, water-based acrylic"
    )
    {
        Synonyms = ["glue", "product", "bonded with", "adhesivo", "pegamento", "producto"],
    };

    public static readonly SheetColumn Lot = new("lot", ColumnType.Code, "Its lot", "L2307")
    {
        Synonyms = ["lot number", "batch", "batch number", "lote", "número de lote"],
    };

    public static readonly SheetColumn Coats = new("coats", ColumnType.WholeNumber, "Coats of adhesive", "3")
    {
        Synonyms = ["layers", "number of coats", "capas"],
        Most = 20,
    };

    public static readonly SheetColumn Attachment = new("attachment", ColumnType.Choice, "How it was attached", "liquid")
    {
        Synonyms = ["attached with", "method", "attachment method", "sujeción", "método"],
        Choices =
        [
            new("liquid", "glue", "adhesive", "líquido"),
            new("tape", "tapes", "cinta"),
            new("mixed", "liquid and tape", "tape and liquid", "both", "mixto", "mixta"),
            new("clips", "clip", "pinzas"),
        ],
    };

    public static readonly SheetColumn WaitsKept = new("waits kept", ColumnType.YesNo, "Every drying wait was kept", "yes")
    {
        Synonyms = ["waits", "drying kept", "drying times kept", "esperas cumplidas"],
    };

    public static readonly SheetColumn RemovedOn = new("removed on", ColumnType.Date, "Day it was taken down", "2025-04-30")
    {
        Synonyms = ["removed", "taken down", "take down", "removal date", "retirada el", "quitada el"],
    };

    public static readonly SheetColumn RemovedBecause = new("removed because", ColumnType.Choice, "Why it was taken down", "scheduled")
    {
        Synonyms = ["removal reason", "reason", "why removed", "motivo"],
        Choices =
        [
            new("scheduled", "planned", "due", "routine", "programado", "programada"),
            new("lifted", "lift", "came loose", "loose", "despegado", "despegada"),
            new("brought in", "came off", "came off at home", "fell off", "se cayó"),
            new("lost at home", "lost", "perdido", "perdida"),
            new("reaction", "skin", "irritation", "reacción"),
            new("skin needs care", "skin rest", "sore skin", "piel"),
            new("operation", "surgery", "scan", "operación"),
            new("treatment", "medical treatment", "tratamiento"),
            new("rest", "break", "pause", "descanso"),
            new("leaving", "stops", "left us", "se va"),
            new("not seen again", "no vuelta a ver"),
            new("style", "restyle", "colour", "estilo"),
            new("salon's choice", "salon", "salon choice", "decisión del salón"),
            new("other", "otro", "otra"),
        ],
    };

    public static readonly SheetColumn LiftedOn = new("lifted on", ColumnType.Date, "Day it lifted", "2025-04-27")
    {
        Synonyms = ["lifted", "lift date", "despegada el"],
    };

    public static readonly SheetColumn LiftReportedOn = new("lift reported on", ColumnType.Date, "Day the client told us", "2025-04-28")
    {
        Synonyms = ["lift reported", "reported on", "avisó el"],
    };

    public static readonly SheetColumn LiftEarliestOn = new(
        "lift earliest on",
        ColumnType.Date,
        "Where the day is not known: it lifted after this one",
        "2025-04-19"
    )
    {
        Synonyms = ["lift not before", "despegada después del"],
    };

    public static readonly SheetColumn LiftLatestOn = new("lift latest on", ColumnType.Date, "And by this one", "2025-04-23")
    {
        Synonyms = ["lift not after", "despegada antes del"],
    };

    public static readonly SheetColumn LiftZone = new("lift zone", ColumnType.Choice, "Where it lifted", "temples")
    {
        Synonyms = ["zone", "lifted where", "where it lifted", "zona"],
        Choices =
        [
            new("front", "hairline", "frente", "frontal"),
            new("temples", "temple", "sienes", "sien"),
            new("sides", "side", "lados", "lado"),
            new("crown", "vertex", "coronilla"),
            new("nape", "back", "nuca"),
            new("other", "otra", "otro"),
        ],
    };

    public static readonly SheetColumn LastSoundOn = new("last sound on", ColumnType.Date, "Last day it was seen to hold", "2025-04-20")
    {
        Synonyms = ["last sound", "last seen sound", "held until", "última vez firme"],
    };

    public static readonly SheetColumn Stylist = new("stylist", ColumnType.Text, "Who bonded it", "Imre Castellan")
    {
        Synonyms = ["bonded by", "by", "hand", "staff", "estilista"],
    };
}
