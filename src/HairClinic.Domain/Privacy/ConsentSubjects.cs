namespace HairClinic.Domain.Privacy;

/// <summary>Which consents are asked.</summary>
public static class ConsentSubjects
{
    /// <summary>Nothing is asked for that is not done: the program sends no reminders. What was agreed to before stands, and is taken back.</summary>
    public static bool IsAsked(this ConsentSubject subject) => subject != ConsentSubject.Messages;
}
