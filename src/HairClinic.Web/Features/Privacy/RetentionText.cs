namespace HairClinic.Web.Features.Privacy;

/// <summary>What is kept, in words; each is a localiser's key.</summary>
public static class RetentionText
{
    public static string Of(RetentionSubject subject) =>
        subject switch
        {
            RetentionSubject.ClientsWhoLeft => "Clients who left",
            RetentionSubject.ContactNotes => "Notes on calls and messages",
            RetentionSubject.Drafts => "Forms begun and not sent",
            RetentionSubject.SignInLinks => "Sign-in links, used or run out",
            RetentionSubject.WriteKeys => "Keys of what was saved",
            _ => "Work that is done",
        };

    public static string Counted(RetentionSubject subject) =>
        subject switch
        {
            RetentionSubject.ClientsWhoLeft => "from the day they left; then the record is erased",
            RetentionSubject.ContactNotes => "from the day of the call",
            RetentionSubject.Drafts => "from the last change",
            RetentionSubject.SignInLinks => "from their use or end",
            RetentionSubject.WriteKeys => "from the save; they keep a second tap from saving twice",
            _ => "from the day it was done",
        };
}
