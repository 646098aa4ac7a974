using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Work;

namespace HairClinic.Web.Accounts;

/// <summary>
/// Informs the owner of an account by mail of changes to their sign-in, in case it was not them. Discreet:
/// it names neither practice nor trade.
/// </summary>
public sealed class AccountNotices(PracticeJobRunner jobs, IClock clock)
{
    public const string Subject = "Your sign-in was changed";

    public const string SetByAnother = "Your name, e-mail address or password was set by whoever manages your place of work.";

    public const string LinkMade = "A link to choose a new password was made by whoever manages your place of work.";

    /// <returns>Null where there is no address to write to.</returns>
    public static Letter? LetterTo(string? email, string what) =>
        string.IsNullOrWhiteSpace(email)
            ? null
            : new(
                email,
                Subject,
                $"""
                {what}

                If you know of this, there is nothing to do. If not, sign in, end the other sign-ins, change your password, and tell the owner.
                """
            )
            {
                Kind = LetterKind.SignInChanged,
            };

    /// <param name="what">One sentence, such as "A passkey was added."</param>
    public async Task NotifyAsync(AppUser user, string what, CancellationToken cancellation)
    {
        if (LetterTo(user.Email, what) is not { } letter)
            return;
        var now = clock.GetCurrentInstant();
        await jobs.RunJobAsync(
            user.PracticeId,
            "sign-in notice",
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                db.WorkItems.Add(WorkItemFactory.SendLetter(letter, now));
                return await db.SaveChangesAsync(cancellation);
            }
        );
    }
}
