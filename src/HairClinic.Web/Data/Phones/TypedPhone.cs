using HairClinic.Domain.Practices;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Data.Phones;

/// <summary>A client's phone number as somebody typed it, read in the practice's own country.</summary>
public static class TypedPhone
{
    /// <summary>E.164, or null for nothing typed; the practice is only asked for its country if there is something to read.</summary>
    /// <exception cref="Refusal">It is not a phone number.</exception>
    public static async Task<string?> ReadAsync(ClinicDb db, string? typed, CancellationToken cancellation)
    {
        if (string.IsNullOrWhiteSpace(typed))
            return null;
        var region = await db.PracticeSettings.Select(s => s.Region).SingleAsync(cancellation);
        var numbering = new PhoneNumbering(region);
        return numbering.Read(typed, out var written) switch
        {
            PhoneFault.None => written,
            PhoneFault.HasExtension => throw new Refusal(
                "“{0}” has an extension: type the number without it, and note the extension.",
                typed
            ),
            PhoneFault.DoesNotExist => throw new Refusal(
                "“{0}” is not a number that can be rung; write it such as {1}.",
                typed,
                numbering.Example()
            ),
            _ => throw new Refusal("“{0}” does not look like a phone number; write it such as {1}.", typed, numbering.Example()),
        };
    }
}
