using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Features.Settings;

internal static class AccessLogWords
{
    public static string Of(AccessDeed deed) =>
        deed switch
        {
            AccessDeed.OpenedHealth => "Opened health answers",
            AccessDeed.SavedHealth => "Saved health answers",
            AccessDeed.OpenedPhotos => "Opened photos",
            AccessDeed.AddedPhoto => "Added a photo",
            AccessDeed.ChangedPhoto => "Shared a photo or took it back",
            AccessDeed.RemovedPhoto => "Removed a photo",
            AccessDeed.OpenedPapers => "Opened papers",
            AccessDeed.ExportedClient => "Took out one client’s record",
            AccessDeed.ExportedPractice => "Took out the whole book",
            AccessDeed.ImportedBinder => "Brought in a binder",
            AccessDeed.ErasedClient => "Erased a client",
            AccessDeed.OpenedCardByGrant => "Opened a client of another salon",
            AccessDeed.GrantedSalon => "Let another salon in",
            AccessDeed.EndedGrant => "Ended another salon’s access",
            AccessDeed.Transferred => "Moved a client to another salon",
            AccessDeed.ExportedAccessLog => "Took out the access log",
            AccessDeed.RotatedKeys => "Changed the keys",
            AccessDeed.LetOwnerIn => "Let an owner in again",
            AccessDeed.ChangedOpeningAddress => "Changed an address that opens a client’s pages",
            AccessDeed.ConfirmedOpeningAddress => "Confirmed an address that opens a client’s pages",
            AccessDeed.DeniedOpeningAddress => "Said that a new address is not theirs",
            AccessDeed.ChangedSignIn => "Changed somebody’s sign-in",
            _ => "Something newer than these words",
        };
}
