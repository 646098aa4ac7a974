namespace HairClinic.Web.Features.MyHair;

/// <summary>What a photo shows, as its client reads it. The localiser's keys.</summary>
public static class OwnPhotoText
{
    public static string Of(PhotoKind kind) =>
        kind switch
        {
            PhotoKind.Before => "Before",
            PhotoKind.After => "After",
            PhotoKind.Template => "Template",
            PhotoKind.Scalp => "Scalp",
            _ => "Another picture",
        };
}
