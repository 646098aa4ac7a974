namespace HairClinic.Web.Data.Phones;

/// <summary>A phone number as somebody typed it, read in the country of the salon it is typed for (<see cref="PhoneNumberParser.ForZone"/>).</summary>
public static class PhoneParser
{
    /// <summary>E.164, or null for nothing typed; the database is only asked for the country if there is something to read.</summary>
    /// <param name="salonId">Null for no salon: the practice's own country counts.</param>
    /// <param name="field">The property it was typed into.</param>
    /// <exception cref="Refusal">It is not a phone number.</exception>
    public static async Task<string?> ParseAsync(ClinicDb db, string? typed, Guid? salonId, string field, CancellationToken cancellation) =>
        string.IsNullOrWhiteSpace(typed) ? null : Parse(await LoadNumberingAsync(db, salonId, cancellation), typed, field);

    /// <summary>How numbers are read in a salon. One round trip.</summary>
    public static async Task<PhoneNumberParser> LoadNumberingAsync(ClinicDb db, Guid? salonId, CancellationToken cancellation)
    {
        var place = await db
            .PracticeSettings.Select(s => new
            {
                s.Region,
                Zone = db.Salons.Where(x => x.Id == salonId).Select(x => x.Zone).FirstOrDefault(),
            })
            .SingleAsync(cancellation);
        return PhoneNumberParser.ForZone(place.Zone, place.Region);
    }

    /// <exception cref="Refusal">It is not a phone number.</exception>
    public static string Parse(PhoneNumberParser numbering, string typed, string field) =>
        numbering.Parse(typed, out var written) switch
        {
            PhoneFault.None => written,
            PhoneFault.HasExtension => throw new Refusal(
                "“{0}” has an extension: type the number without it, and note the extension.",
                typed
            )
            {
                Field = field,
            },
            PhoneFault.DoesNotExist => throw new Refusal(
                "“{0}” is not a number that can be rung; write it such as {1}.",
                typed,
                numbering.Example()
            )
            {
                Field = field,
            },
            _ => throw new Refusal("“{0}” does not look like a phone number; write it such as {1}.", typed, numbering.Example())
            {
                Field = field,
            },
        };
}
