namespace HairClinic.Domain.Privacy;

/// <summary>What a client agrees to, each by itself: agreeing to one says nothing about another.</summary>
public enum ConsentSubject
{
    Treatment,
    PatchTest,
    Photos,

    /// <summary>Photos shown to people in training, with the face covered.</summary>
    TeachingPhotos,
    Messages,
    InsurerPapers,
}
