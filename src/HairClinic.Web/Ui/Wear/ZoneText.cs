namespace HairClinic.Web.Ui.Wear;

/// <summary>What a zone of the perimeter is called; the localiser's keys.</summary>
public static class ZoneText
{
    public static string Of(LiftZone zone) =>
        zone switch
        {
            LiftZone.Front => "front",
            LiftZone.Temples => "temples",
            LiftZone.Sides => "sides",
            LiftZone.Crown => "crown",
            LiftZone.Nape => "nape",
            _ => "elsewhere",
        };
}
