namespace HairClinic.Web.Features.MyHair;

/// <summary>What follows when a client takes a consent back. The localiser's keys.</summary>
public static class OwnConsentText
{
    public static string Follows(ConsentSubject subject) =>
        subject switch
        {
            ConsentSubject.Treatment =>
                "Your salon will ask you anew before anything more is done. Visits you have booked stay booked: ring about them.",
            ConsentSubject.PatchTest => "No more patch tests. Without one, some products cannot be used on you.",
            ConsentSubject.Photos => "No new photos are taken. Those already kept stay until you ask your salon to remove them.",
            ConsentSubject.TeachingPhotos => "Your photos are shown to nobody in training any more.",
            ConsentSubject.Messages => "We write to you no more. A link you ask for is sent all the same.",
            _ => "No more papers are made for your insurer. What they were given already stays with them.",
        };
}
