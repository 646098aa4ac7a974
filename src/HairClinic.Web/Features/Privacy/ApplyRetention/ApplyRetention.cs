using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using HairClinic.Web.Privacy;

namespace HairClinic.Web.Features.Privacy;

/// <summary>Takes out what is past its time under one rule, after somebody looked at it: of clients, those of their own salons.</summary>
public sealed class ApplyRetention(ClinicDbFactory databases, CurrentActor current, RetentionEnforcer book)
{
    private IReadOnlyList<Guid>? Salons => RetentionEnforcer.SalonScopeOfPerson(current.Person);

    public async Task<Screen> OpenAsync(RetentionSubject subject, CancellationToken cancellation)
    {
        await using var db = databases.OpenPracticeWide(nameof(ApplyRetention));
        var rule = (await RetentionEnforcer.RulesAsync(db, cancellation)).Single(r => r.Subject == subject);
        return new Screen(subject, rule.KeepDays, await book.CountAsync(db, rule, Salons, cancellation));
    }

    /// <remarks>Without a key: a second time finds nothing left to take out.</remarks>
    /// <exception cref="Refusal">More is past its time than was shown, or a client cannot be erased now.</exception>
    public async Task<Outcome> SaveAsync(Input input, CancellationToken cancellation)
    {
        await using var db = databases.OpenPracticeWide(nameof(ApplyRetention));
        if (current.Person.StaffRole is not (StaffRole.Owner or StaffRole.Manager))
            throw new Refusal("Only an owner or a manager can take this out.");
        var rule = (await RetentionEnforcer.RulesAsync(db, cancellation)).Single(r => r.Subject == input.Subject);
        var over = await book.CountAsync(db, rule, Salons, cancellation);
        if (over.Rows > input.Rows || over.Codes.Except(input.Codes).Any())
            throw new Refusal("More is past its time than was shown. Nothing was taken out; look at it again.");
        return new Outcome(await book.ApplyAsync(db, rule, Salons, cancellation));
    }

    public sealed record Screen(RetentionSubject Subject, int KeepDays, RetentionEnforcer.Over Over);

    /// <param name="Rows">What was shown.</param>
    public sealed record Input(RetentionSubject Subject, int Rows, IReadOnlyList<string> Codes);

    public sealed record Outcome(int Rows);
}
