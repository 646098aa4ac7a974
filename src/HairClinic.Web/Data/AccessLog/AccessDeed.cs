namespace HairClinic.Web.Data.AccessLog;

/// <summary>What was done with what a client confided.</summary>
public enum AccessDeed
{
    OpenedHealth,
    SavedHealth,
    OpenedPhotos,
    AddedPhoto,
    ChangedPhoto,
    RemovedPhoto,
    OpenedPapers,
    ExportedClient,
    ExportedPractice,
    ImportedBinder,
    ErasedClient,
    OpenedCardByGrant,
    GrantedSalon,
    EndedGrant,
    Transferred,
    ExportedAccessLog,
    RotatedKeys,

    /// <summary>At the machine's own command line, a link that sets an owner's password.</summary>
    LetOwnerIn,
}
