namespace HairClinic.Domain.Clients;

/// <summary>What a client chose on their own page. No row: the defaults apply.</summary>
public sealed class ClientPreference : PracticeOwned
{
    private ClientPreference() { }

    public ClientPreference(Guid id, Guid clientId) => (Id, ClientId) = (id, clientId);

    public Guid ClientId { get; private set; }

    /// <summary>Whether we may write to them. A sign-in link they asked for is sent all the same.</summary>
    public bool Letters { get; private set; } = true;

    /// <summary>A culture name such as es-ES; null follows their browser.</summary>
    public string? Language { get; private set; }

    /// <summary>No longer asked, since no page shows a client a length; earlier choices are kept.</summary>
    public LengthUnit? Units { get; private set; }

    public void SetLettersAndLanguage(bool letters, string? language)
    {
        Letters = letters;
        Language = string.IsNullOrWhiteSpace(language) ? null : language;
    }
}

/// <summary>What lengths are shown in; they are kept in millimetres.</summary>
public enum LengthUnit
{
    Centimetres,
    Inches,
}
