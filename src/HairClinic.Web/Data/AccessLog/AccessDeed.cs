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
    OpenedAccessLog,
    ExportedAccessLog,
    RotatedKeys,
    BondedDespiteBlock,
}
