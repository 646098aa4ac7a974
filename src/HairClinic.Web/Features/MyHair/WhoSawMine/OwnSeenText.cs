using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Features.MyHair;

/// <summary>Lines of the access log as the client they are about reads them. The localiser's keys.</summary>
public static class OwnSeenText
{
    public static string Of(AccessDeed deed) =>
        deed switch
        {
            AccessDeed.OpenedHealth => "Looked at your health answers",
            AccessDeed.SavedHealth => "Wrote down your health answers",
            AccessDeed.OpenedPhotos => "Looked at your photos",
            AccessDeed.AddedPhoto => "Added a photo of you",
            AccessDeed.ChangedPhoto => "Shared a photo with you, or took it back",
            AccessDeed.RemovedPhoto => "Removed a photo of you",
            AccessDeed.OpenedPapers => "Opened your papers",
            AccessDeed.ExportedClient => "Took out all that is kept about you",
            AccessDeed.OpenedCardByGrant => "Opened your record, having been let in",
            AccessDeed.GrantedSalon => "Let another salon see your record",
            AccessDeed.EndedGrant => "Ended what another salon could see",
            AccessDeed.Transferred => "Moved you to another salon",
            AccessDeed.ChangedOpeningAddress => "Changed the e-mail address that opens your pages, or who looks after you",
            AccessDeed.ConfirmedOpeningAddress => "Confirmed an e-mail address that opens your pages",
            AccessDeed.DeniedOpeningAddress => "Said that a new e-mail address is not yours",
            _ => "Did something that concerns you",
        };

    /// <summary>What somebody is in the practice.</summary>
    public static string OfRole(string role) =>
        role switch
        {
            nameof(StaffRole.Owner) => "runs the practice",
            nameof(StaffRole.Manager) => "manages the salon",
            nameof(StaffRole.FrontDesk) => "at the desk",
            nameof(StaffRole.Stylist) => "stylist",
            _ => "in training",
        };
}
