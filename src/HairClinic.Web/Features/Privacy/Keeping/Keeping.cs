using HairClinic.Domain.Practices;
using HairClinic.Domain.Privacy;
using HairClinic.Web.Data.Privacy;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Practices;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Features.Privacy.Keeping;

/// <summary>How long the practice keeps what, and what is past its time today.</summary>
public sealed class Keeping(ClinicDbFactory databases, WriteOnce writes, RetentionBook book)
{
    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.OpenPracticeWide(nameof(Keeping));
        var rules = new List<Rule>();
        foreach (var rule in await RetentionBook.RulesAsync(db, cancellation))
        {
            var usual = RetentionRule.Defaults(rule.Subject);
            rules.Add(
                new Rule(
                    rule.Subject,
                    rule.KeepDays,
                    rule.ByItself,
                    (rule.KeepDays, rule.ByItself) == usual,
                    rule.LastAppliedAt,
                    await book.CountAsync(db, rule, cancellation)
                )
            );
        }
        return new Screen(rules);
    }

    /// <exception cref="Refusal">Shorter than is safe, or people to be erased unasked.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(Keeping),
            input,
            async db =>
            {
                var subject = input.Subject!.Value;
                var rule = await db.RetentionRules.SingleOrDefaultAsync(r => r.Subject == subject, cancellation);
                if (rule is null)
                    db.RetentionRules.Add(rule = new RetentionRule(key, subject));
                rule.Set(input.KeepDays!.Value, input.ByItself);
                return new Outcome(rule.Id);
            },
            cancellation
        );

    /// <param name="Usual">As the program brought it: common practice.</param>
    public sealed record Rule(
        RetentionSubject Subject,
        int KeepDays,
        bool ByItself,
        bool Usual,
        Instant? LastAppliedAt,
        RetentionBook.Over Over
    );

    public sealed record Screen(IReadOnlyList<Rule> Rules);

    public sealed record Input
    {
        public RetentionSubject? Subject { get; set; }

        public int? KeepDays { get; set; }

        public bool ByItself { get; set; }
    }

    public sealed record Outcome(Guid RuleId);
}
