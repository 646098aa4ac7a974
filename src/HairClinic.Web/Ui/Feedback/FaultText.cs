using FluentValidation.Results;
using HairClinic.Web.Language;

namespace HairClinic.Web.Ui.Feedback;

/// <summary>What is wrong, in words: a rule's sentence, or a refusal's with its blanks filled in.</summary>
public static class FaultText
{
    /// <summary>A refusal as a fault of the field it names.</summary>
    public static ValidationFailure ToFieldFailure(string field, Refusal refusal) => new(field, refusal.Sentence) { CustomState = refusal };

    public static string Of(ValidationFailure fault, IStringLocalizer words) =>
        fault.CustomState is Refusal refusal ? Of(refusal, words) : words[fault.ErrorMessage];

    public static string Of(Refusal refusal, IStringLocalizer words) =>
        words[refusal.Sentence, [.. refusal.Arguments.Select(argument => Spoken(argument, words))]];

    // States, days and times are spoken as the rest of the page speaks them.
    private static object Spoken(object argument, IStringLocalizer words) =>
        argument switch
        {
            Enum word => words.WordOfBoxed(word),
            LocalDate day => Dates.Day(day),
            LocalTime time => Dates.Time(time),
            _ => argument,
        };
}
