namespace HairClinic.Domain.Privacy;

/// <summary>What of all a client gave and took back stands at a moment.</summary>
/// <remarks>
/// The last word counts, and only on its own subject. Of two at the same instant a withdrawal wins: in doubt nothing is agreed.
/// Silence is no consent.
/// </remarks>
public static class ConsentLedger
{
    /// <returns>The row that says yes, or null: never asked, or taken back.</returns>
    public static Consent? StandsOn(IEnumerable<Consent> ledger, ConsentSubject subject, Instant at) =>
        Last(ledger, subject, at) is { Given: true } last ? last : null;

    /// <returns>The last word on it, yes or no; null: never asked.</returns>
    public static Consent? Last(IEnumerable<Consent> ledger, ConsentSubject subject, Instant at) =>
        ledger.Where(c => c.Subject == subject && c.At <= at).OrderByDescending(c => c.At).ThenBy(c => c.Given).FirstOrDefault();
}
