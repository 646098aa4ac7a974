namespace HairClinic.Web.Features.Clients;

internal static class HealthWords
{
    public static string Of(LossSign sign) =>
        sign switch
        {
            LossSign.Sudden => "Came suddenly",
            LossSign.Patchy => "In patches",
            LossSign.Painful => "Painful",
            LossSign.Scaling => "Scaling",
            LossSign.Pustular => "With pustules",
            LossSign.Scarring => "Scarring",
            LossSign.InChild => "In a child",
            _ => "A mole that changes",
        };

    public static string Of(ScalpSign sign) =>
        sign switch
        {
            ScalpSign.Broken => "Broken skin",
            ScalpSign.Infected => "Infected",
            ScalpSign.Sunburnt => "Sunburnt",
            ScalpSign.FreshlyOperated => "Freshly operated",
            _ => "Irritated",
        };
}
