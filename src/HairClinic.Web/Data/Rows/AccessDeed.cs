namespace HairClinic.Web.Data.Rows;

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

    /// <summary>An e-mail address that opens a client's pages was entered or taken away.</summary>
    ChangedOpeningAddress,
    ConfirmedOpeningAddress,
    DeniedOpeningAddress,

    /// <summary>Somebody set another person's sign-in name, address, password or a link to choose one.</summary>
    ChangedSignIn,
}
