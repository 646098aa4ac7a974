namespace HairClinic.Web.Features.Binder.Sheets;

public static class UnitColumns
{
    public static readonly SheetColumn Serial = new("serial", ColumnType.Code, "The practice's own code for the unit", "U-0107")
    {
        Required = true,
        Synonyms =
        [
            "unit",
            "unit code",
            "unit number",
            "unit no",
            "serial number",
            "serial no",
            "code",
            "system",
            "system number",
            "unidad",
            "serie",
            "número de serie",
            "sistema",
        ],
    };

    public static readonly SheetColumn ClientCode = new(
        "client code",
        ColumnType.Code,
        "The code of the client who wears it; blank for stock and loan units",
        "C-0042"
    )
    {
        Synonyms = ["client", "client number", "client no", "client id", "cliente", "código de cliente", "número de cliente"],
    };

    public static readonly SheetColumn Workshop = new("workshop", ColumnType.Text, "Who made it", "Workshop North")
    {
        Synonyms = ["maker", "made by", "supplier", "factory", "manufacturer", "taller", "fabricante", "proveedor"],
    };

    public static readonly SheetColumn Base = new("base", ColumnType.Text, "The base", "fine lace")
    {
        Required = true,
        Synonyms = ["base type", "base material", "cap", "material", "tipo de base"],
    };

    public static readonly SheetColumn Kind = new(
        "unit kind",
        ColumnType.Text,
        "The practice's own name for this kind of unit",
        "Fine lace, full cap"
    )
    {
        Synonyms = ["kind", "type", "unit type", "model", "tipo", "tipo de unidad", "modelo"],
    };

    public static readonly SheetColumn State = new("state", ColumnType.Choice, "Where the unit is in its life", "bonded")
    {
        Synonyms = ["status", "stage", "estado"],
        Choices =
        [
            new("specified", "spec", "draft", "especificada", "especificado"),
            new("ordered", "on order", "pedida", "pedido"),
            new("acknowledged", "confirmed", "confirmada", "confirmado"),
            new("shipped", "sent", "in transit", "enviada", "enviado"),
            new("arrived", "received", "llegada", "recibida", "recibido"),
            new("inspected", "checked", "inspeccionada", "revisada"),
            new("accepted", "aceptada", "aceptado"),
            new("prepared", "ready", "cut in", "preparada", "lista"),
            new("bonded", "worn", "on head", "in use", "wearing", "puesta", "en uso"),
            new("resting", "removed", "off", "in rotation", "en reposo"),
            new("retired", "worn out", "discarded", "retirada", "retirado"),
            new("lost", "perdida", "perdido"),
            new("damaged", "broken", "dañada", "dañado"),
            new("returned", "returned to client", "devuelta", "devuelto"),
            new("emergency spare", "spare", "emergency", "repuesto", "de repuesto"),
        ],
    };

    public static readonly SheetColumn SpecifiedOn = On("specified", "Day the specification was written", "especificada el");
    public static readonly SheetColumn OrderedOn = On(
        "ordered",
        "Day it was ordered",
        "order date",
        "date ordered",
        "pedida el",
        "fecha de pedido"
    );

    public static readonly SheetColumn PromisedFor = new(
        "promised for",
        ColumnType.Dates,
        "Day the workshop promised; every revision, oldest first",
        "2025-03-01 | 2025-03-20"
    )
    {
        Synonyms =
        [
            "promised",
            "promise",
            "due from workshop",
            "expected",
            "expected on",
            "delivery date",
            "prometida para",
            "fecha prometida",
            "entrega prevista",
        ],
    };

    // Without the plain words: they mean how often.
    public static readonly SheetColumn SentBackOn = new(
        "sent back on",
        ColumnType.Date,
        "Day it last went back to be made again",
        "2025-02-14"
    )
    {
        Synonyms = ["remade on", "returned to workshop on", "devuelta al taller el"],
    };

    public static readonly SheetColumn AcknowledgedOn = On(
        "acknowledged",
        "Day the workshop confirmed the order",
        "confirmed on",
        "confirmed",
        "confirmada el"
    );
    public static readonly SheetColumn ShippedOn = On(
        "shipped",
        "Day it left the workshop",
        "sent on",
        "ship date",
        "enviada el",
        "fecha de envío"
    );
    public static readonly SheetColumn ArrivedOn = On(
        "arrived",
        "Day it arrived",
        "received on",
        "received",
        "arrival date",
        "recibida el",
        "fecha de llegada"
    );
    public static readonly SheetColumn InspectedOn = On("inspected", "Day it was inspected on arrival", "checked on", "inspeccionada el");
    public static readonly SheetColumn AcceptedOn = On("accepted", "Day it was accepted", "aceptada el");
    public static readonly SheetColumn PreparedOn = On("prepared", "Day it was made ready to bond", "ready on", "preparada el");
    public static readonly SheetColumn TimesRemade = new(
        "times remade",
        ColumnType.WholeNumber,
        "How often it went back to the workshop to be made again; 0 if never, blank if nobody knows",
        "0"
    )
    {
        Synonyms = ["remade", "remakes", "made again", "sent back", "veces rehecha", "rehecha"],
        Most = 9,
    };
    public static readonly SheetColumn FirstBondedOn = On(
        "first bonded",
        "Day it was bonded for the first time",
        "first worn",
        "fitted on",
        "fitted",
        "first fitting",
        "primera colocación"
    );
    public static readonly SheetColumn RetiredOn = On("retired", "Day it was worn for the last time", "end date", "retirada el");

    public static readonly SheetColumn RetiredBecause = new("retired because", ColumnType.Text, "Why it was retired", "shed at the front")
    {
        Synonyms = ["reason", "retired reason", "why retired", "motivo", "motivo de retirada"],
    };

    public static readonly SheetColumn Place = new("place", ColumnType.Text, "The salon where it is kept", "Harbour Street")
    {
        Synonyms = ["salon", "location", "where", "kept at", "branch", "lugar", "salón"],
    };

    public static readonly SheetColumn Price = new("price", ColumnType.Money, "What the client pays for it", "950.00")
    {
        Synonyms = ["amount", "fee", "precio", "importe"],
    };

    public static readonly SheetColumn Currency = new("currency", ColumnType.Currency, "The currency of the price, three letters", "GBP")
    {
        Synonyms = ["currency code", "moneda", "divisa"],
    };

    private static SheetColumn On(string what, string meaning, params string[] synonyms) =>
        new(what + " on", ColumnType.Date, meaning, "2025-02-14") { Synonyms = [what, what + " date", .. synonyms] };
}
