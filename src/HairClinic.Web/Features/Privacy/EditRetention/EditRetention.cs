using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Privacy;

namespace HairClinic.Web.Features.Privacy;

/// <summary>How long the practice keeps what, which its owner says, and what is past its time today: of clients, those of one's own salons.</summary>
public sealed class EditRetention(
    ClinicDbFactory databases,
    WriteOnce writes,
    RetentionEnforcer book,
    StepUpCheck check,
    CurrentActor current
)
{
    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.OpenPracticeWide(nameof(EditRetention));
        var rules = new List<Rule>();
        foreach (var rule in await RetentionEnforcer.RulesAsync(db, cancellation))
        {
            var usual = RetentionRule.DefaultsForSubject(rule.Subject);
            rules.Add(
                new Rule(
                    rule.Subject,
                    rule.KeepDays,
                    rule.ByItself,
                    (rule.KeepDays, rule.ByItself) == usual,
                    rule.LastAppliedAt,
                    await book.CountAsync(db, rule, RetentionEnforcer.SalonScopeOfPerson(current.Person), cancellation)
                )
            );
        }
        return new Screen(rules, MayChange);
    }

    /// <exception cref="Refusal">Shorter than is safe, people to be erased unasked, not an owner, or one who did not prove it anew.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        if (!MayChange)
            throw new Refusal("Only an owner changes how long things are kept.");
        await check.RefuseUnlessFreshAsync(cancellation);
        return await writes.RunAsync(key, nameof(EditRetention), input, db => WriteAsync(db, key, input, cancellation), cancellation);
    }

    private bool MayChange => current.Person.StaffRole == StaffRole.Owner;

    private static async Task<Outcome> WriteAsync(ClinicDb db, Guid key, Input input, CancellationToken cancellation)
    {
        var subject = input.Subject!.Value;
        var rule = await db.RetentionRules.SingleOrDefaultAsync(r => r.Subject == subject, cancellation);
        if (rule is null)
            db.RetentionRules.Add(rule = new RetentionRule(key, subject));
        rule.Edit(input.KeepDays!.Value, input.ByItself);
        return new Outcome(rule.Id);
    }

    /// <param name="Usual">As the program brought it: common practice.</param>
    public sealed record Rule(
        RetentionSubject Subject,
        int KeepDays,
        bool ByItself,
        bool Usual,
        Instant? LastAppliedAt,
        RetentionEnforcer.Over Over
    );

    /// <param name="MayChange">Theirs to change: an owner's.</param>
    public sealed record Screen(IReadOnlyList<Rule> Rules, bool MayChange);

    public sealed record Input
    {
        public RetentionSubject? Subject { get; set; }
        public int? KeepDays { get; set; }
        public bool ByItself { get; set; }
    }

    public sealed record Outcome(Guid RuleId);
}
