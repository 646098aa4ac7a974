using HairClinic.Web.Mail;
using HairClinic.Web.Ui;

namespace HairClinic.Web.Features.Settings;

/// <summary>What keeps letters from their readers, a sentence each.</summary>
public static class MailWarnings
{
    private const string Where = "/practice/letters";

    public static IEnumerable<MissingSetupItem> Find(Letters.Screen screen)
    {
        if (screen.State.Way is MailWay.None)
            yield return new("No mail server is set: no letter leaves, so no client gets a link to their own page.", Where);
        if (!screen.State.KnowsAddress)
            yield return new("This site was not told its own address: no letter can carry a link.", Where);
        if (screen.State.Fault is { } fault)
            yield return new(MailReadiness.DescribeFaultCode(fault), Where);
        if (screen.Waiting is { Since: { } since } waiting)
            yield return new(
                "Letters that did not go out: {0}, the oldest asked for on {1}, {2}. They are tried again, with ever longer pauses.",
                Where,
                waiting.Count,
                Dates.Day(since.Date),
                Dates.Time(since.TimeOfDay)
            );
        // Where the server answers, what it said of the last of them is all there is to go by.
        if (screen is { State.Fault: null, Waiting: { Count: > 0, LastFault: { } last } })
            yield return new(MailReadiness.DescribeFaultCode(last), Where);
        if (screen.Lost.Count > 0)
            yield return new(
                "Letters of the last 30 days that did not go, or may not have: {0}. They are listed under Letters.",
                Where,
                screen.Lost.Count
            );
        if (screen.Undone > 0)
            yield return new(
                "Work behind the screens that failed again and again and was given up: {0}. Under Letters it can be tried again.",
                Where,
                screen.Undone
            );
    }
}
