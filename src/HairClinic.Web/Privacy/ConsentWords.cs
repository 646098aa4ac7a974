namespace HairClinic.Web.Privacy;

/// <summary>What each consent is called, and the words a practice starts with. They are a beginning, not legal advice: local law comes first.</summary>
public static class ConsentWords
{
    /// <summary>The localiser's key.</summary>
    public static string Of(ConsentSubject subject) =>
        subject switch
        {
            ConsentSubject.Treatment => "Fitting and care",
            ConsentSubject.PatchTest => "Patch test",
            ConsentSubject.Photos => "Photos for the record",
            ConsentSubject.TeachingPhotos => "Photos for teaching",
            ConsentSubject.Messages => "Messages",
            _ => "Papers for an insurer",
        };

    public static string FirstOf(ConsentSubject subject) =>
        subject switch
        {
            ConsentSubject.Treatment =>
                "I agree to have my unit fitted, taken down and cared for. I was told what is used on my skin and that I can stop at any time.",
            ConsentSubject.PatchTest =>
                "I agree to a patch test: a little of each product is put on my skin and looked at later. I will say at once if it itches, burns or swells.",
            ConsentSubject.Photos => "I agree that photos of my hair and scalp are kept in my record. They are shown to nobody else.",
            ConsentSubject.TeachingPhotos =>
                "I agree that photos without my face may be shown to people in training. I can take this back; they are then shown no more.",
            ConsentSubject.Messages => "I agree to be sent reminders. They never say what a visit is for.",
            _ => "I agree that papers I ask for are made for my insurer from my record.",
        };
}
