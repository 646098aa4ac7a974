namespace HairClinic.Web.Features.Clients;

/// <summary>Repairs in words: the localiser's keys.</summary>
public static class RepairText
{
    public static string Of(RepairKind kind) =>
        kind switch
        {
            RepairKind.NewFront => "New front",
            RepairKind.Reknotted => "Hair knotted in",
            RepairKind.Rim => "Rim mended",
            _ => "Something else",
        };
}
