namespace HairClinic.Web.Ui.Care;

/// <summary>The usual words on aftercare, where a practice wrote none of its own. Common practice, no source. The localiser's keys.</summary>
public static class AftercareText
{
    /// <summary>Stands at the end of whatever a practice writes in place of the usual words.</summary>
    public const string Caution = "A product’s label and your local rules come before this.";

    public static string Title(CareTopic topic) =>
        topic switch
        {
            CareTopic.FirstDay => "The first day and night",
            CareTopic.Washing => "Washing",
            CareTopic.Sleeping => "Sleeping",
            CareTopic.SportAndWater => "Sport and water",
            CareTopic.Heat => "Heat",
            _ => "Your skin",
        };

    public static string Usual(CareTopic topic) =>
        topic switch
        {
            CareTopic.FirstDay =>
                "Keep it dry and cool for a day at least: no water, no sweat, no sport, no sauna. Do not press or test the edges.",
            CareTopic.Washing =>
                "After the first day wash gently with lukewarm water and what your salon gave you. No oil and no conditioner near the edge. Let it dry on its own or with cool air.",
            CareTopic.Sleeping => "A satin or silk pillowcase is kind to it. Never go to bed with it wet. Long hair: a loose plait.",
            CareTopic.SportAndWater =>
                "After sport pat the edge dry, do not rub. Salt and pool water shorten the hold: rinse with fresh water and let it dry.",
            CareTopic.Heat => "Keep hot tools and hot air away from the edge, and use them cooler than on grown hair.",
            _ =>
                "A little itch in the first days can happen. Sore, red, weeping, swollen or burning skin is different: ring us, and ask a physician.",
        };
}
