namespace HairClinic.Web.Features.Binder.Sheets;

public static class VisitColumns
{
    public static readonly SheetColumn ClientCode = UnitColumns.ClientCode with
    {
        Meaning = "The code of the client who comes",
        Required = true,
    };

    public static readonly SheetColumn Salon = new("salon", ColumnType.Text, "The salon", "Harbour Street")
    {
        Required = true,
        Synonyms = ["branch", "location", "studio", "place", "salón", "sucursal", "local"],
    };

    public static readonly SheetColumn Date = new("date", ColumnType.Date, "The day", "2025-04-30")
    {
        Required = true,
        Synonyms = ["day", "visit date", "fecha", "día"],
    };

    public static readonly SheetColumn Start = new("start", ColumnType.Time, "When it starts, by the salon's clock", "09:30")
    {
        Required = true,
        Synonyms = ["starts", "starts at", "start time", "time", "from", "hora", "inicio", "hora de inicio"],
    };

    public static readonly SheetColumn Minutes = new("minutes", ColumnType.Minutes, "How long it takes", "90")
    {
        Synonyms = ["duration", "length", "min", "minutos", "duración"],
        Least = 1,
        Most = 1440,
    };

    public static readonly SheetColumn Service = new("service", ColumnType.Text, "The service", "rebond")
    {
        Required = true,
        Synonyms = ["treatment", "visit kind", "kind", "type", "servicio", "tratamiento"],
    };

    public static readonly SheetColumn Chair = new("chair", ColumnType.Text, "The chair", "Chair 2")
    {
        Synonyms = ["room", "seat", "silla", "sillón", "cabina"],
    };

    public static readonly SheetColumn Stylist = new("stylist", ColumnType.Text, "Who does it", "Imre Castellan")
    {
        Synonyms = ["with", "by", "staff", "estilista"],
    };

    public static readonly SheetColumn State = new("state", ColumnType.Choice, "What became of it", "done")
    {
        Synonyms = ["status", "outcome", "estado"],
        Choices =
        [
            new("booked", "confirmed", "planned", "reservada", "reservado", "confirmada"),
            new("done", "completed", "came", "finished", "hecha", "hecho", "realizada"),
            new("cancelled", "canceled", "cancelada", "cancelado"),
            new("did not come", "no show", "noshow", "missed", "no vino", "no se presentó"),
        ],
    };

    public static readonly SheetColumn Note = ClientColumns.Note with { Meaning = "Note on the visit", Example = "Bring the spare" };
}
