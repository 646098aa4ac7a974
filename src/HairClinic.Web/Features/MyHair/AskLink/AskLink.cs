using HairClinic.Web.Data.Books;
using HairClinic.Web.Practices;

namespace HairClinic.Web.Features.MyHair.AskLink;

/// <summary>A client asks for a link to their own page. The answer and its time are the same whether or not anyone has that address.</summary>
public sealed class AskLink(ClinicDbFactory databases, LinkAskBook asks)
{
    public async Task SaveAsync(Input input, CancellationToken cancellation)
    {
        await using var unfenced = databases.OpenUnfenced();
        await asks.AskAsync(unfenced, input.Email, cancellation);
    }

    public sealed record Input
    {
        public string Email { get; set; } = "";
    }
}
