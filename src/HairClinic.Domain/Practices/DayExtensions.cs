namespace HairClinic.Domain.Practices;

public static class DayExtensions
{
    /// <summary>The day itself, where it is not after today.</summary>
    /// <param name="field">The field of the form in which it stands.</param>
    /// <exception cref="Refusal">It lies in the future.</exception>
    public static LocalDate RequireReached(this LocalDate day, LocalDate today, string field = "On") =>
        day <= today ? day : throw new Refusal("{0} is in the future: choose today or earlier.", day) { Field = field };
}
