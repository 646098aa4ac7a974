using HairClinic.Web.Accounts;
using HairClinic.Web.Data;

namespace HairClinic.Web.Workers;

/// <summary>Looks up, out of sight of whoever asked, which practices know an address, and sends the links.</summary>
public sealed class SignInLinkSender(IServiceScopeFactory scopes, PracticeJobRunner jobs, LinkAskQueue asks, SignInLinkStore links)
{
    public async Task SendPendingAsync(IReadOnlyList<Guid> practices, CancellationToken cancellation)
    {
        await using var scope = scopes.CreateAsyncScope();
        await using var unfenced = scope.ServiceProvider.GetRequiredService<ClinicDbFactory>().OpenWithoutActor();
        foreach (var address in await asks.DequeueBatchAsync(unfenced, only: null, cancellation))
        {
            foreach (var practice in practices)
                await jobs.RunJobAsync(practice, "answer-ask", services => AnswerAsync(services, address, cancellation));
        }
    }

    private async Task<int> AnswerAsync(IServiceProvider services, string address, CancellationToken cancellation)
    {
        await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
        await links.AnswerRequestAsync(db, address, cancellation);
        return await db.SaveChangesAsync(cancellation);
    }
}
