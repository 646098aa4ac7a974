using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Privacy;

namespace HairClinic.Web.Features.MyHair;

/// <summary>What a client agreed to, in the words they had before them; each can be taken back, which is a line of its own.</summary>
public sealed class MyConsents(ClinicDbFactory databases, WriteOnce writes, CurrentActor current, IClock clock)
{
    /// <returns>Null when the client is no longer there, or their address is not confirmed.</returns>
    public async Task<Screen?> OpenAsync(CancellationToken cancellation)
    {
        var client = current.Client.ClientId;
        await using var db = databases.Open();
        if (await OwnSalonReader.ZoneIfConfirmedAsync(db, client, cancellation) is not { } home)
            return null;
        var lines = await LedgerAsync(cancellation);
        var now = clock.GetCurrentInstant();
        return new Screen(
            now.InZone(home).Date,
            home,
            [
                .. Enum.GetValues<ConsentSubject>()
                    .Select(subject => ConsentValidityRule.FindConsent(lines.Select(l => l.Consent), subject, now))
                    .OfType<Consent>()
                    .Select(stands => lines.First(l => l.Consent == stands)),
            ],
            lines
        );
    }

    /// <summary>Adds that it is taken back. Of messages also stops the letters, so that it holds from the same moment.</summary>
    /// <exception cref="Refusal">Nothing stands that could be taken back, or their address is not confirmed.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(MyConsents),
            input,
            async db =>
            {
                var client = current.Client.ClientId;
                if (!await db.MayReadConfidentialAsync(cancellation))
                    throw new Refusal("Your salon has to confirm your e-mail address first. Please ring them.");
                var now = clock.GetCurrentInstant();
                var ledger = (await LedgerAsync(cancellation)).Select(l => l.Consent);
                var stands =
                    ConsentValidityRule.FindConsent(ledger, input.Subject, now)
                    ?? throw new Refusal("This was taken back already, or was never agreed to.");
                // Under the words that were agreed to: those are what is taken back.
                db.Consents.Add(
                    new Consent(key, client, input.Subject, given: false, stands.TextId, now, takenBy: null, ConsentWay.OnOwnPage)
                );
                if (input.Subject == ConsentSubject.Messages)
                {
                    var chosen = await Preferences.LoadOrAddAsync(db, client, cancellation);
                    chosen.SetLettersAndLanguage(letters: false, chosen.Language);
                }
                return new Outcome(input.Subject);
            },
            cancellation
        );

    // A client reads no people, and no record folded into theirs: their own ledger is read for them, by their own id alone.
    private async Task<IReadOnlyList<ConsentStore.Line>> LedgerAsync(CancellationToken cancellation)
    {
        await using var wide = databases.OpenPracticeWide(nameof(MyConsents));
        return await ConsentStore.LedgerAsync(wide, current.Client.ClientId, cancellation);
    }

    /// <param name="Zone">The home salon's.</param>
    /// <param name="Standing">What is agreed to now.</param>
    /// <param name="History">Every line, newest first.</param>
    public sealed record Screen(
        LocalDate Today,
        DateTimeZone Zone,
        IReadOnlyList<ConsentStore.Line> Standing,
        IReadOnlyList<ConsentStore.Line> History
    );

    public sealed record Input(ConsentSubject Subject);

    public sealed record Outcome(ConsentSubject TakenBack);
}
