using HairClinic.Web.Data.Books;
using HairClinic.Web.Practices;

namespace HairClinic.Web.Features.MyHair.AskLink;

/// <summary>A client asks for a link to their own page. The answer and its time are the same whether or not anyone has that address.</summary>
public sealed class AskLink(PracticeJobs jobs, LinkAskBook asks)
{
    public async Task SaveAsync(Input input, CancellationToken cancellation)
    {
        foreach (var practice in await jobs.PracticeIdsAsync(cancellation))
            await jobs.RunAsync(practice, "ask-link", services => AskAsync(services, input.Email, cancellation));
    }

    private async Task<bool> AskAsync(IServiceProvider services, string email, CancellationToken cancellation)
    {
        await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
        await asks.AskAsync(db, email, cancellation);
        return true;
    }

    public sealed record Input
    {
        public string Email { get; set; } = "";
    }
}
