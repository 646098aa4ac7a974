using HairClinic.Domain.Practices;
using HairClinic.Web.Ui;
using Microsoft.Extensions.Localization;
using NodaTime;

namespace HairClinic.Web.Shell;

/// <summary>A refusal as the page says it: states, days and times as the rest of the page speaks them.</summary>
public static class RefusalText
{
    public static string Of(Refusal refusal, IStringLocalizer words) =>
        words[refusal.Sentence, [.. refusal.Arguments.Select(argument => Spoken(argument, words))]];

    private static object Spoken(object argument, IStringLocalizer words) =>
        argument switch
        {
            Enum word => words[word.ToString()].Value,
            LocalDate day => Dates.Day(day),
            LocalTime time => Dates.Time(time),
            _ => argument,
        };
}
