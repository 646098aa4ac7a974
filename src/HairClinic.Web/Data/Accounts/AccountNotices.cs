using HairClinic.Web.Practices;
using HairClinic.Web.Workers;
using NodaTime;

namespace HairClinic.Web.Data.Accounts;

/// <summary>
/// Tells the owner of an account by mail what was changed about their sign-in, so that they hear of it when it was not them. Discreet:
/// it names neither practice nor trade.
/// </summary>
public sealed class AccountNotices(PracticeJobs jobs, IClock clock)
{
    public const string Subject = "Your sign-in was changed";

    /// <param name="what">One sentence, such as "A passkey was added."</param>
    public async Task TellAsync(AppUser user, string what, CancellationToken cancellation)
    {
        if (string.IsNullOrWhiteSpace(user.Email))
            return;
        var now = clock.GetCurrentInstant();
        var letter = new Letter(
            user.Email,
            Subject,
            $"""
            {what}

            If this was you, there is nothing to do. If not, sign in, end the other sign-ins, change your password, and tell the owner.
            """
        );
        await jobs.RunAsync(
            user.PracticeId,
            "sign-in notice",
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                db.WorkItems.Add(WorkItems.Send(letter, now));
                return await db.SaveChangesAsync(cancellation);
            }
        );
    }
}
