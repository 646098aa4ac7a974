namespace HairClinic.Web.Data;

/// <summary>Makes the words by which clients and units are found, and reads what is typed the same way.</summary>
public static class FindWordIndexer
{
    public static IEnumerable<FindWord> For(Client client) =>
        Words(client.Name)
            .Concat(Words(client.CalledAs))
            .Distinct()
            .Select(w => (FindWordKind.ClientName, w))
            .Append((FindWordKind.ClientCode, Normalize(client.Code)))
            .Concat(client.Phone is null ? [] : [(FindWordKind.ClientPhone, ReverseDigits(client.Phone))])
            .Concat(client.Email is null ? [] : [(FindWordKind.ClientEmail, Normalize(client.Email))])
            .Select(w => new FindWord(Guid.CreateVersion7(), w.Item1, client.Id, w.Item2));

    public static FindWord For(HairSystem unit) => new(Guid.CreateVersion7(), FindWordKind.UnitSerial, unit.Id, Normalize(unit.Serial));

    /// <summary>Letters and digits in lower case without accents: “Núñez-O'Hara” becomes “nunez” and “ohara”.</summary>
    public static IEnumerable<string> Words(string? text) =>
        (text ?? "").Split([' ', '-', ',', '.', '/'], StringSplitOptions.RemoveEmptyEntries).Select(Normalize).Where(w => w.Length > 0);

    /// <summary>The digits of a phone number from the end, so that the end can be typed.</summary>
    public static string ReverseDigits(string phone) => new([.. phone.Where(char.IsAsciiDigit).Reverse()]);

    public static string Normalize(string text)
    {
        var normal = new StringBuilder(text.Length);
        foreach (var c in text.Normalize(NormalizationForm.FormD))
        {
            if (char.IsLetterOrDigit(c) && CharUnicodeInfo.GetUnicodeCategory(c) != UnicodeCategory.NonSpacingMark)
                normal.Append(char.ToLowerInvariant(c));
        }
        return normal.ToString();
    }
}

public enum FindWordKind
{
    ClientName,
    ClientCode,
    ClientPhone,
    ClientEmail,
    UnitSerial,
}
