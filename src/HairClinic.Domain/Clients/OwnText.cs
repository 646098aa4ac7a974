namespace HairClinic.Domain.Clients;

/// <summary>The practice's own words on a topic of aftercare, in place of the usual ones.</summary>
public sealed class OwnText : PracticeOwned
{
    private OwnText() { }

    public OwnText(Guid id, CareTopic topic, string language, string text)
    {
        Id = id;
        Topic = topic;
        Language = language;
        SetText(text);
    }

    public CareTopic Topic { get; private set; }

    /// <summary>Two letters: en, es.</summary>
    public string Language { get; private set; } = "en";

    public string Text { get; private set; } = "";

    public void SetText(string text) => Text = text.Trim();
}

/// <summary>What a client is told about wearing their unit between visits.</summary>
public enum CareTopic
{
    FirstDay,
    Washing,
    Sleeping,
    SportAndWater,
    Heat,
    Skin,
}
