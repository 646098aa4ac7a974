namespace HairClinic.Web.Features.Clients;

internal static class PhotoWords
{
    public static string Of(PhotoKind kind) =>
        kind switch
        {
            PhotoKind.Before => "Before",
            PhotoKind.After => "After",
            PhotoKind.Template => "Template",
            PhotoKind.Scalp => "Scalp",
            _ => "Other",
        };
}
