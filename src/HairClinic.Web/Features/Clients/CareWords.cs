namespace HairClinic.Web.Features.Clients;

/// <summary>Skin and sweat as screens name them; the localiser's keys.</summary>
public static class CareWords
{
    public static string Of(Enum choice) => choice is SkinOiliness skin ? Of(skin) : Of((Sweating)choice);

    public static string Of(SkinOiliness skin) =>
        skin switch
        {
            SkinOiliness.Dry => "dry",
            SkinOiliness.Normal => "normal",
            _ => "oily",
        };

    public static string Of(Sweating sweat) =>
        sweat switch
        {
            Sweating.Low => "little",
            Sweating.Normal => "normal",
            _ => "heavily",
        };
}
