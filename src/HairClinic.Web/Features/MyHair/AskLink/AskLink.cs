using HairClinic.Domain.Clients;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Practices;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Features.MyHair.AskLink;

/// <summary>A client asks for a link to their own page. The answer is the same whether or not anyone has that address.</summary>
public sealed class AskLink(PracticeJobs jobs)
{
    public async Task SaveAsync(Input input, CancellationToken cancellation)
    {
        foreach (var practice in await jobs.PracticeIdsAsync(cancellation))
            await jobs.RunAsync(practice, "ask-link", services => PostAsync(services, input.Email.Trim(), cancellation));
    }

    private static async Task<int> PostAsync(IServiceProvider services, string email, CancellationToken cancellation)
    {
        await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
        var word = FindWords.Normal(email);
        var found = await (
            from w in db.FindWords
            join client in db.Clients on w.SubjectId equals client.Id
            where w.Word == word && w.Kind == FindKind.ClientEmail && client.MergedIntoId == null
            select client
        ).ToListAsync(cancellation);
        foreach (var client in found.Where(c => IsTheirs(c, email)))
            services.GetRequiredService<SignInLinkBook>().Post(db, client);
        return await db.SaveChangesAsync(cancellation);
    }

    private static bool IsTheirs(Client client, string email) => string.Equals(client.Email, email, StringComparison.OrdinalIgnoreCase);

    public sealed record Input
    {
        public string Email { get; set; } = "";
    }
}
